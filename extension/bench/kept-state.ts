import { isCount, isRecord } from '../read-place';
import { isWord } from './messages';

/** Where a panel belongs, and what the maker had chosen in it; kept by the editor while the page is away and over a restart. */
export interface KeptState {
    readonly uri: string;
    readonly recipe?: string;
    /** Key of the chosen frame. */
    readonly frame?: string;
    readonly blank?: string;
    /** How closely each blank is looked at, and where. */
    readonly windows?: Readonly<Record<string, { readonly x: number; readonly y: number; readonly zoom: number }>>;
    /** Where the section line lies on each blank, mm from the top. */
    readonly cuts?: Readonly<Record<string, number>>;
    /** Index of the step whose toolpath is shown. */
    readonly toolpath?: number;
    /** Indices of the inlays whose halves are pressed. */
    readonly presses?: readonly number[];
    /** What was left out of the pictures. */
    readonly hidden?: readonly string[];
    /** When the run begins, as it stands in the day book's field. */
    readonly start?: string;
    /** How far the page is scrolled, px. */
    readonly scroll?: number;
}

/** More than this nobody has chosen by hand. */
const MOST = 100;

/** What is not understood is left out, the rest stays. */
export function readKeptState(state: unknown): KeptState | undefined {
    if (!isRecord(state) || typeof state.uri !== 'string' || state.uri.length > 4096) return undefined;
    const { uri, recipe, frame, blank, toolpath, presses, start, scroll, hidden } = state;
    const windows = entries(state.windows, (each) =>
        isRecord(each) && isNumber(each.x) && isNumber(each.y) && isNumber(each.zoom) && each.zoom >= 1
            ? { x: each.x, y: each.y, zoom: each.zoom }
            : undefined,
    );
    const cuts = entries(state.cuts, (y) => (isNumber(y) ? y : undefined));
    return {
        uri,
        ...(isWord(recipe) ? { recipe } : {}),
        ...(typeof frame === 'string' ? { frame: frame.slice(0, 500) } : {}),
        ...(isWord(blank) ? { blank } : {}),
        ...(windows === undefined ? {} : { windows }),
        ...(cuts === undefined ? {} : { cuts }),
        ...(isCount(toolpath) ? { toolpath } : {}),
        ...(Array.isArray(presses) && presses.every(isCount) ? { presses: presses.slice(0, MOST) } : {}),
        ...(Array.isArray(hidden) && hidden.every((each) => typeof each === 'string')
            ? { hidden: hidden.slice(0, MOST).map((each) => each.slice(0, 30)) }
            : {}),
        ...(typeof start === 'string' ? { start: start.slice(0, 30) } : {}),
        ...(isNumber(scroll) && scroll >= 0 ? { scroll } : {}),
    };
}

/** Values by blank; undefined where there are none. */
function entries<T>(value: unknown, read: (each: unknown) => T | undefined): Record<string, T> | undefined {
    if (!isRecord(value)) return undefined;
    const all = Object.entries(value).flatMap(([name, each]) => {
        const known = isWord(name) ? read(each) : undefined;
        return known === undefined ? [] : [[name, known] as const];
    });
    return all.length === 0 ? undefined : Object.fromEntries(all.slice(0, MOST));
}

function isNumber(value: unknown): value is number {
    return Number.isFinite(value);
}
