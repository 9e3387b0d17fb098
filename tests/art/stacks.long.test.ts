import { beforeAll, expect, it } from 'vitest';
import { painted } from '../../shared/art/painted';
import { readSvg } from '../../shared/art/read-svg';
import { areaDifference, compare, witness } from './witness';

beforeAll(witness);

const svg = (content: string) =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">${content}</svg>`;

const any = (i: number, of: number) => (i * 7919 + 13 * ((i * i) % 97)) % of;

it('hundreds of translucent discs across one another are looked at on a grid, which is said', () => {
    const discs = Array.from(
        { length: 400 },
        (_, i) =>
            `<circle cx="${20 + any(i, 61)}" cy="${20 + any(3 * i + 1, 59)}" r="${8 + any(i, 11)}" fill="${i % 2 ? '#fff' : '#000'}" fill-opacity="${0.05 + any(i, 7) / 50}"/>`,
    ).join('');
    const region = painted(readSvg(svg(discs)), []);
    expect(region.grid).toBeGreaterThanOrEqual(0.05);
    expect(region.grid).toBeLessThan(0.5);
    expect(areaDifference(compare(svg(discs), 1600))).toBeLessThan(0.01);
}, 120_000);
