import type { Interval } from './interval';
import { isLopsided, spread } from './interval';
import { fromBase, type Quantity } from './quantity';

/** A number as a person writes it: at most `digits` behind the point, no trailing zeros, never "-0". */
export function showNumber(value: number, digits = 2): string {
    if (!Number.isFinite(value)) return value > 0 ? 'endless' : 'unknown';
    if (Math.abs(value) >= 1e9) return value.toExponential(2);
    const text = value.toFixed(digits);
    const short = text.includes('.') ? text.replace(/\.?0+$/, '') : text;
    return short === '-0' ? '0' : short;
}

const lengthDigits: Readonly<Record<string, number>> = { mm: 2, cm: 3, m: 4, in: 3, thou: 0, um: 0 };

/** A length in mm, in the unit the maker used (mm when that was not a length unit). */
export function showLength(mm: number, unit = 'mm'): string {
    const known = unit in lengthDigits ? unit : 'mm';
    const written = fromBase(mm, known);
    const digits = known === 'mm' && Math.abs(mm) < 0.1 && mm !== 0 ? 3 : lengthDigits[known];
    return `${showNumber(written, digits)} ${known}`;
}

/** "0.54 mm ± 0.05 mm"; what is known only to a factor is no plus and minus: "0.8 mm (0.39 mm to 1.63 mm)". */
export function showLengthInterval(mm: Interval, unit = 'mm'): string {
    const half = spread(mm);
    if (half < 5e-4) return showLength(mm.value, unit);
    if (isLopsided(mm)) {
        return `${showLength(mm.value, unit)} (${showLength(mm.low, unit)} to ${showLength(mm.high, unit)})`;
    }
    // Both with the same digits; a spread that would vanish in them keeps one more.
    const known = unit in lengthDigits ? unit : 'mm';
    const digits = (lengthDigits[known] ?? 2) + (half < 0.01 ? 1 : 0);
    const show = (value: number): string => showNumber(fromBase(value, known), digits);
    return `${show(mm.value)} ${known} ± ${show(half)} ${known}`;
}

/** A written quantity in its own unit, with its tolerance. */
export function showQuantity(quantity: Quantity): string {
    const digits = quantity.dimension === 'length' ? (lengthDigits[quantity.unit] ?? 3) : 3;
    const value = showNumber(fromBase(quantity.value, quantity.unit), digits);
    const tolerance =
        quantity.tolerance > 0
            ? ` ± ${showNumber(fromBase(quantity.value + quantity.tolerance, quantity.unit) - fromBase(quantity.value, quantity.unit), digits)}`
            : '';
    return `${value}${tolerance}${quantity.unit === '' ? '' : ` ${quantity.unit}`}`;
}

/** Seconds as "2 h 5 min", "3 min 20 s", "45 s". */
export function showTime(seconds: number): string {
    if (!Number.isFinite(seconds)) return 'no end';
    if (seconds < 0.5) return '0 s';
    const whole = Math.round(seconds < 600 ? seconds : seconds / 60) * (seconds < 600 ? 1 : 60);
    const days = Math.floor(whole / 86400);
    const hours = Math.floor((whole % 86400) / 3600);
    const minutes = Math.floor((whole % 3600) / 60);
    const rest = whole % 60;
    const parts = [
        days > 0 ? `${days} d` : '',
        hours > 0 ? `${hours} h` : '',
        minutes > 0 && days === 0 ? `${minutes} min` : '',
        rest > 0 && hours === 0 && days === 0 ? `${rest} s` : '',
    ].filter((part) => part !== '');
    return parts.slice(0, 2).join(' ');
}

/** An area in mm2 as "840 mm2" or "12.4 cm2". */
export function showArea(mm2: number): string {
    return Math.abs(mm2) < 1000 ? `${showNumber(mm2, 1)} mm²` : `${showNumber(mm2 / 100, 1)} cm²`;
}

/** A volume in mm3 as millilitres. */
export function showVolume(mm3: number): string {
    return `${showNumber(mm3 / 1000, mm3 < 10_000 ? 2 : 1)} ml`;
}

export function showMass(grams: number): string {
    return `${showNumber(grams, grams < 10 ? 2 : 1)} g`;
}

/** A ratio as per cent. */
export function showRatio(ratio: number): string {
    return `${showNumber(ratio * 100, ratio < 0.1 ? 1 : 0)} %`;
}

export function showSpeed(mmPerSecond: number, unit = 'mm/s'): string {
    return `${showNumber(fromBase(mmPerSecond, unit), unit === 'mm/s' ? 0 : 1)} ${unit}`;
}
