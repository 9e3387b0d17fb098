/**
 * A key for written data that says what it holds and not where it was written or what is told of it, so that moving text
 * around forgets nothing. Plain data only.
 */
export function contentKey(...things: readonly unknown[]): string {
    return JSON.stringify(things.map(bare));
}

function bare(thing: unknown): unknown {
    if (Array.isArray(thing)) return thing.map(bare);
    if (typeof thing !== 'object' || thing === null) return thing;
    return Object.fromEntries(
        Object.entries(thing)
            .filter(([key]) => key !== 'where' && key !== 'whole' && key !== 'about')
            .map(([key, value]) => [key, bare(value)]),
    );
}
