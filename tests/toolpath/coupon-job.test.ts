import { describe, expect, it } from 'vitest';
import { couponSheet } from '../../shared/burn/coupon-sheet';
import { rs274 } from '../../shared/sheets/rs274';
import { couponJob } from '../../shared/toolpath/coupon-job';
import { shed, woodOf } from '../burn/stock';
import { readProgram } from './rs274-reader';

describe('the machine file of a coupon', () => {
    const sheet = couponSheet(shed, woodOf(600e-6))!;
    const job = couponJob(sheet, { topSpeed: 600, acceleration: 6000 });
    const result = rs274(job, { comments: ['coupon'], fullPower: 45, origin: 'X 0 Y 0 is the lower left corner' });

    it('burns every square with its own power and speed, and the numbers', () => {
        if ('problem' in result) throw new Error(result.problem);
        const burnt = readProgram(result.text).moves.filter((move) => !move.rapid && move.s > 0);
        for (const square of sheet.squares) {
            const inside = burnt.filter(
                ({ x0, y0 }) =>
                    x0 > square.x - 0.01 &&
                    x0 < square.x + square.size + 0.01 &&
                    sheet.height - y0 > square.y &&
                    sheet.height - y0 < square.y + square.size,
            );
            expect(inside).toHaveLength(Math.round(square.size / sheet.pitch) * square.passes);
            for (const move of inside) {
                expect(move.s).toBeCloseTo(square.powerRatio * 1000, 6);
                expect(move.feed).toBeCloseTo(square.speed * 60, 6);
            }
        }
        const inSquares = sheet.squares.reduce((sum, square) => sum + Math.round(square.size / sheet.pitch) * square.passes, 0);
        expect(burnt.length).toBe(inSquares + sheet.labels.reduce((sum, line) => sum + line.length / 2 - 1, 0));
    });

    it('starts with the gentlest square and goes by the numbers', () => {
        const along = job.work.slice(0, -1).map(({ power, speed, passes }) => (power / speed) * passes);
        expect(along).toEqual(along.toSorted((a, b) => a - b));
        expect(job.work.slice(0, -1).map(({ name }) => Number(/^square (\d+): /.exec(name)![1]))).toEqual(
            sheet.squares.map((_, i) => i + 1),
        );
        expect(job.work.at(-1)!.name).toBe('numbers');
    });
});
