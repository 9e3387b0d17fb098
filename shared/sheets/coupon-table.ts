import type { CouponSheet } from '../burn/coupon-sheet';
import { showNumber } from '../quantity/show';
import { csv } from './csv';

/** The squares of a coupon by their burnt numbers, with a column left to fill in; what is expected is a guess from density. */
export function couponTable({ squares, strips = [], ladder, pitch }: CouponSheet): string {
    const head = [
        'square',
        'power %',
        'power W',
        'speed mm/s',
        'pitch mm',
        'passes',
        'guess mm',
        'from mm',
        'to mm',
        'measured mm',
    ];
    const depth = (mm: number | undefined): string => (mm === undefined ? '' : showNumber(mm, 2));
    return csv([
        head,
        ...squares.map(({ number, powerRatio, power, speed, passes, expected }) => [
            String(number),
            showNumber(powerRatio * 100, 3),
            showNumber(power, 3),
            showNumber(speed, 3),
            showNumber(pitch, 4),
            String(passes),
            depth(expected?.value),
            depth(expected?.low),
            depth(expected?.high),
            '',
        ]),
        ...strips.map(({ number, drawn, powerRatio, power, speed, passes }) => [
            `strip ${number} of ${showNumber(drawn)} mm`,
            showNumber(powerRatio * 100, 3),
            showNumber(power, 3),
            showNumber(speed, 3),
            '',
            String(passes),
            '',
            '',
            '',
            '',
        ]),
        ...(ladder?.plugs ?? []).map(({ number, larger }) => [
            `plug ${number} ${showNumber(larger, 3)} mm larger`,
            showNumber(ladder!.settings.powerRatio * 100, 3),
            showNumber(ladder!.settings.power, 3),
            showNumber(ladder!.settings.speed, 3),
            '',
            String(ladder!.settings.passes),
            '',
            '',
            '',
            '',
        ]),
    ]);
}
