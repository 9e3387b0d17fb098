import type { Dimension } from '../quantity/dimension';
import type { Interval } from '../quantity/interval';
import {
    showArea,
    showLength,
    showLengthInterval,
    showMass,
    showNumber,
    showRatio,
    showSpeed,
    showTime,
    showVolume,
} from '../quantity/show';

/** One thing that is written in a recipe or follows from it, ready to be set beside its counterpart. */
export interface Figure {
    readonly label: string;
    /** As a maker reads it. */
    readonly text: string;
    /** Two figures are the same when their keys are. */
    readonly key: string;
    readonly amount?: Amount;
}

/** The number behind a figure, in base units (see Dimension). */
export interface Amount {
    readonly value: number;
    readonly dimension: Dimension;
    /** Ends of the range in which it is expected, where it is an estimate. */
    readonly low?: number;
    readonly high?: number;
    /** The unit that the maker wrote it in. */
    readonly unit?: string;
}

const showing: Readonly<Record<Dimension, (value: number) => string>> = {
    length: (mm) => showLength(mm),
    area: showArea,
    volume: showVolume,
    time: showTime,
    speed: (value) => showSpeed(value),
    acceleration: (value) => `${showNumber(value, 0)} mm/s2`,
    power: (watts) => `${showNumber(watts, 1)} W`,
    ratio: showRatio,
    dose: (value) => `${showNumber(value, 3)} J/mm2`,
    'removal-energy': (value) => `${showNumber(value, 3)} J/mm3`,
    mass: showMass,
    density: (value) => `${showNumber(value * 1e6, 0)} kg/m3`,
    spread: (value) => `${showNumber(value * 1e6, 0)} g/m2`,
    temperature: (value) => `${showNumber(value, 1)} degC`,
    angle: (rad) => `${showNumber((rad * 180) / Math.PI, 1)} deg`,
    money: (value) => showNumber(value, 2),
    sheets: (value) => `${showNumber(value, 2)} ${value === 1 ? 'sheet' : 'sheets'}`,
    count: (value) => showNumber(value, 2),
};

/** A number in base units as a person reads it. */
export function showAmount(value: number, dimension: Dimension): string {
    return showing[dimension](value);
}

/** A figure that was worked out: two that read the same are the same. */
export function worked(label: string, value: number, dimension: Dimension): Figure {
    const text = showAmount(value, dimension);
    return { label, text, key: text, amount: { value, dimension } };
}

/** A figure that is a word, not a number. */
export function word(label: string, text: string): Figure {
    return { label, text, key: text };
}

/** A length that was worked out, with its ends. */
export function range(label: string, { value, low, high }: Interval): Figure {
    const text = showLengthInterval({ value, low, high });
    return { label, text, key: text, amount: { value, dimension: 'length', low, high } };
}
