import type { LaserSettings } from '../plan/laser-plan';
import { type Interval, isLopsided, spread } from '../quantity/interval';
import { fromBase } from '../quantity/quantity';
import { showNumber } from '../quantity/show';
import { followsOutline } from '../recipe/follows-outline';
import type { Cut, Engrave } from '../recipe/step';

/** How far a written figure may lie from the solved one: far less than shows in any depth. */
const faithful = 5e-5;

/** Settings of a step that are worked out and not written, each as it would be written. */
export interface OpenSettings {
    readonly power?: string;
    readonly speed?: string;
    readonly pitch?: string;
    readonly passes?: string;
}

export function openSettings(step: Engrave | Cut, settings: LaserSettings): OpenSettings {
    const { power, speed, pitch, passes } = allSettings(step, settings);
    return {
        ...(step.power === undefined ? { power } : {}),
        ...(step.speed === undefined ? { speed } : {}),
        ...(step.kind === 'engrave' && step.pitch === undefined && pitch !== undefined ? { pitch } : {}),
        ...(step.passes === undefined ? { passes } : {}),
    };
}

function allSettings(step: Engrave | Cut, settings: LaserSettings) {
    const share = settings.powerRatio;
    return {
        power: Number.isFinite(share) ? `${written(share * 100)} %` : `${written(settings.power)} W`,
        speed: `${written(settings.speed)} mm/s`,
        // A line that is followed has no pitch.
        pitch: step.kind === 'engrave' && !followsOutline(step) ? `${written(settings.pitch)} mm` : undefined,
        passes: String(settings.passes),
    };
}

/** What a step is burnt in and with, as a line of a run has it behind the name of the step. */
export function burntWords(step: Engrave | Cut, settings: LaserSettings, sheet: string | undefined): string {
    const { power, speed, pitch, passes } = allSettings(step, settings);
    const many = settings.passes === 1 ? '' : ` x ${passes}`;
    const lines = pitch === undefined ? '' : ` pitch ${pitch}`;
    return `${sheet === undefined ? '' : `of ${sheet} `}${power} at ${speed}${many}${lines}`;
}

/** The depth that a plan gives (mm), as a line of a run keeps it, in a unit of length. */
export function plannedWords(depth: Interval, unit = 'mm'): string {
    const known = unit in digitsOf ? unit : 'mm';
    const show = (mm: number): string => showNumber(fromBase(mm, known), digitsOf[known]);
    const half = show(spread(depth));
    // Known only to a factor, it has no plus and minus.
    if (isLopsided(depth)) return `planned ${show(depth.low)} .. ${show(depth.high)} ${known}`;
    return `planned ${show(depth.value)} ${known}${Number(half) > 0 ? ` +- ${half} ${known}` : ''}`;
}

/** Digits that show a micrometre. */
const digitsOf: Readonly<Record<string, number>> = { mm: 3, cm: 4, in: 4, thou: 1, um: 0 };

/** "80 % at 461 mm/s, pitch 0.1 mm, 3 passes": as much of it as is not written. */
export function settingsPhrase({ power, speed, pitch, passes }: OpenSettings): string {
    const beam = [power, speed === undefined ? undefined : `at ${speed}`].filter((part) => part !== undefined).join(' ');
    const parts = [beam, pitch === undefined ? '' : `pitch ${pitch}`, passes === undefined ? '' : passesPhrase(passes)];
    return parts.filter((part) => part !== '').join(', ');
}

function passesPhrase(passes: string): string {
    return `${passes} ${passes === '1' ? 'pass' : 'passes'}`;
}

/** The shortest way to write a number that stays faithful to it. */
function written(value: number): string {
    for (let digits = 1; digits < 12; digits++) {
        const short = Number(value.toPrecision(digits));
        if (Math.abs(short - value) <= faithful * Math.abs(value)) return showNumber(short, 9);
    }
    return showNumber(value, 9);
}
