import { showNumber } from '../../shared/quantity/show';
import { quoted } from '../../shared/recipe/quoted';
import type { SizeInMm } from './start';

/** A wait of so many seconds; none where nothing has to be waited for. */
export function waiting(seconds: number | undefined, why: string): string[] {
    return seconds === undefined || seconds <= 0 ? [] : [`  wait ${spanWords(seconds)} ${quoted(why)}`];
}

/** What is to be measured of the pocket before the next step, in mm: a measured depth counts like a square of the coupon. */
export function checked(depth: number, either: number): string[] {
    return block('check pocket', [`depth ${showNumber(depth - either, 2)} .. ${showNumber(depth + either, 2)} mm`]);
}

/** A statement of a recipe with its lines in braces. */
export function block(head: string, lines: readonly string[]): string[] {
    return [`  ${head} {`, ...lines.map((line) => `    ${line}`), '  }'];
}

export function extentWords({ width, height }: SizeInMm): string {
    return `${showNumber(width, 1)} x ${showNumber(height, 1)} mm`;
}

/** In hours where they come out even, else in whole minutes, never less than asked for. */
function spanWords(seconds: number): string {
    const minutes = Math.ceil(seconds / 60 - 1e-9);
    return minutes % 60 === 0 ? `${minutes / 60} h` : `${minutes} min`;
}
