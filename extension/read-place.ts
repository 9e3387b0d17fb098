import type { Where } from '../shared/quantity/where';

/** A place of a text that came over a border between processes; undefined for anything else. */
export function readPlace(value: unknown): Where | undefined {
    if (!isRecord(value) || typeof value.uri !== 'string' || value.uri.length > 4096) return undefined;
    return isCount(value.offset) && isCount(value.length)
        ? { uri: value.uri, offset: value.offset, length: value.length }
        : undefined;
}

export function isRecord(value: unknown): value is Record<string, unknown> {
    return typeof value === 'object' && value !== null && !Array.isArray(value);
}

export function isCount(value: unknown): value is number {
    return Number.isSafeInteger(value) && (value as number) >= 0;
}
