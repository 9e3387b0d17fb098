import type { Where } from '../quantity/where';
import type { Step } from '../recipe/step';
import type { Named } from '../recipe/stock';

/**
 * A key for written data that says what it holds and not where it was written or what is told of it, so that moving text
 * around forgets nothing. Plain data only. What is left out: every value that is a `Where`, whatever it is called, and what steps
 * and stock tell their readers.
 */
export function contentKey(...things: readonly unknown[]): string {
    return JSON.stringify(things.map(bare));
}

const told: keyof Step & keyof Named = 'about';

function bare(thing: unknown): unknown {
    if (typeof thing !== 'object' || thing === null) return thing;
    if (Array.isArray(thing)) return thing.filter((each) => !isWhere(each)).map(bare);
    const found: Record<string, unknown> = {};
    for (const [key, value] of Object.entries(thing)) if (key !== told && !isWhere(value)) found[key] = bare(value);
    return found;
}

const place: Readonly<Record<Exclude<keyof Where, 'grade'>, true>> = { uri: true, offset: true, length: true };
const placeKeys = Object.keys(place);

function isWhere(value: unknown): value is Where {
    return typeof value === 'object' && value !== null && placeKeys.every((key) => Object.hasOwn(value, key));
}
