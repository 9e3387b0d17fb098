import type { Where } from '../../shared/quantity/where';
import { isName } from '../../shared/recipe/name';
import type { SectionView } from '../../shared/view/bench-view';
import { type Hideable, hideable } from '../../shared/view/hideable';
import type { PressView } from '../../shared/view/press-view';
import type { RoundView } from '../../shared/view/round-view';
import type { SentPicture } from '../../shared/view/sent-picture';
import type { ToolpathView } from '../../shared/view/toolpath-view';
import { isCount, isRecord, readPlace } from '../read-place';

/** Ticked steps, and when the waits of those that began one are over. */
export type BenchTicks = Readonly<Record<string, { readonly ends?: number }>>;

/** What the extension sends to the bench view. */
export type ToBench =
    | { readonly type: 'picture'; readonly view: SentPicture }
    /** Nothing can be shown at present, in the maker's words. */
    | { readonly type: 'nothing'; readonly why: string }
    | { readonly type: 'cursor'; readonly offset: number; readonly turn: boolean }
    /** The file lies elsewhere now. */
    | { readonly type: 'moved'; readonly uri: string }
    /** What is ticked in the checklist, by the ids of steps; times in ms since 1970. */
    | { readonly type: 'run'; readonly ticks: BenchTicks }
    /** The halves of the first inlay are to be pressed together. */
    | { readonly type: 'show-press' }
    | { readonly type: 'section'; readonly ticket: number; readonly section: SectionView | null }
    /** A piece in the round; in words why not. */
    | { readonly type: 'round'; readonly ticket: number; readonly round: RoundView | string | null }
    /** What lies in the place that was asked for, in words. */
    | { readonly type: 'column'; readonly ticket: number; readonly words: string | null }
    | { readonly type: 'toolpath'; readonly toolpath: ToolpathView | null }
    /** What was to be written could not be, in the maker's words. */
    | { readonly type: 'refused'; readonly why: string }
    /** How far a press is, 0 to 1; then what it shows, or null when it was given up or has nothing to show. */
    | { readonly type: 'pressing'; readonly ticket: number; readonly part: number }
    | { readonly type: 'pressed'; readonly ticket: number; readonly press: PressView | null };

/** What the page can have the editor do, and the command that does it. */
export const benchCommands = {
    write: 'kerfbook.writeFiles',
    compare: 'kerfbook.compareWithCommitted',
    finish: 'kerfbook.finishRun',
    undo: 'undo',
    redo: 'redo',
} as const;
export type BenchCommand = keyof typeof benchCommands;

/** What the bench view sends to the extension. */
export type FromBench =
    | { readonly type: 'ready' }
    | { readonly type: 'reveal'; readonly where: Where; readonly focus: boolean }
    | { readonly type: 'recipe'; readonly name: string }
    | { readonly type: 'explain'; readonly rule: string }
    /** Does what the fix of a finding does. */
    | { readonly type: 'fix'; readonly fix: string; readonly where: Where }
    | { readonly type: 'command'; readonly name: BenchCommand }
    | { readonly type: 'toolpath'; readonly step: number }
    /** Puts a typed number into the text, in the place of what stands at `where` in that version of it. */
    | { readonly type: 'write'; readonly where: Where; readonly textVersion: number; readonly text: string }
    | { readonly type: 'press'; readonly ticket: number; readonly step: number }
    | { readonly type: 'stop-press' }
    | { readonly type: 'section'; readonly ticket: number; readonly frame: number; readonly blank: string; readonly y: number }
    | {
          readonly type: 'round';
          readonly ticket: number;
          readonly frame: number;
          readonly blank: string;
          readonly hidden: readonly Hideable[];
      }
    /** The page itself, to be saved where the maker says: markup. */
    | { readonly type: 'save-page'; readonly name: string; readonly body: string }
    /** A picture to be saved where the maker says: PNG in base64. */
    | { readonly type: 'save-picture'; readonly name: string; readonly png: string }
    /** What lies in a place of a blank, mm. */
    | {
          readonly type: 'column';
          readonly ticket: number;
          readonly frame: number;
          readonly blank: string;
          readonly x: number;
          readonly y: number;
      };

/** Messages cross a border between processes, so nothing about them is taken on trust. */
export function readFromBench(message: unknown): FromBench | undefined {
    return isRecord(message) && isAmong(message.type, fromBench) ? fromBench[message.type](message) : undefined;
}

/** No editor hands over a longer one. */
const MOST_OF_AN_ADDRESS = 4096;

type Message = Readonly<Record<string, unknown>>;

/** What is taken of each message from the page. */
const fromBench: Readonly<Record<FromBench['type'], (message: Message) => FromBench | undefined>> = {
    ready: () => ({ type: 'ready' }),
    reveal: ({ where: written, focus }) => {
        const where = readPlace(written);
        return where && { type: 'reveal', where, focus: focus === true };
    },
    recipe: ({ name }) => (isWord(name) ? { type: 'recipe', name } : undefined),
    fix: ({ fix, where: written }) => {
        const where = readPlace(written);
        return where && typeof fix === 'string' && fix.length <= 1000 ? { type: 'fix', fix, where } : undefined;
    },
    command: ({ name }) => (isAmong(name, benchCommands) ? { type: 'command', name } : undefined),
    explain: ({ rule }) => (isWord(rule) ? { type: 'explain', rule } : undefined),
    toolpath: ({ step }) => (isCount(step) ? { type: 'toolpath', step } : undefined),
    write: ({ where: written, textVersion, text }) => {
        const where = readPlace(written);
        if (where === undefined || !isCount(textVersion) || typeof text !== 'string' || text.length > 200) return undefined;
        return { type: 'write', where, textVersion, text };
    },
    press: ({ ticket, step }) => (isCount(ticket) && isCount(step) ? { type: 'press', ticket, step } : undefined),
    'stop-press': () => ({ type: 'stop-press' }),
    section: ({ ticket, frame, blank, y }) => {
        if (!isCount(ticket) || !isCount(frame) || !isWord(blank) || !isFigure(y)) return undefined;
        return { type: 'section', ticket, frame, blank, y };
    },
    round: ({ ticket, frame, blank, hidden }) => {
        if (!isCount(ticket) || !isCount(frame) || !isWord(blank) || !Array.isArray(hidden)) return undefined;
        return { type: 'round', ticket, frame, blank, hidden: hideable.filter((each) => hidden.includes(each)) };
    },
    'save-picture': ({ name, png }) => {
        if (!isWord(name) || typeof png !== 'string' || !png.startsWith(pngHead) || png.length > MOST_OF_A_PICTURE)
            return undefined;
        return { type: 'save-picture', name, png };
    },
    'save-page': ({ name, body }) => {
        if (!isWord(name) || typeof body !== 'string' || body.length > MOST_OF_A_PICTURE || /<script/i.test(body))
            return undefined;
        return { type: 'save-page', name, body };
    },
    column: ({ ticket, frame, blank, x, y }) => {
        if (!isCount(ticket) || !isCount(frame) || !isWord(blank) || !isFigure(x) || !isFigure(y)) return undefined;
        return { type: 'column', ticket, frame, blank, x, y };
    },
};

/** What every PNG begins with, in base64. */
const pngHead = 'iVBORw0KGgo';
const MOST_OF_A_PICTURE = 1e8;

export function readToBench(message: unknown): ToBench | undefined {
    if (!isRecord(message) || !isAmong(message.type, toBench)) return undefined;
    if (!toBench[message.type](message)) return undefined;
    return message.type === 'cursor'
        ? { type: 'cursor', offset: message.offset as number, turn: message.turn === true }
        : (message as unknown as ToBench);
}

/** What each message to the page has to hold. */
const toBench: Readonly<Record<ToBench['type'], (message: Message) => boolean>> = {
    picture: ({ view }) => isPicture(view),
    nothing: ({ why }) => typeof why === 'string',
    cursor: ({ offset }) => isCount(offset),
    moved: ({ uri }) => typeof uri === 'string' && uri.length <= MOST_OF_AN_ADDRESS,
    run: ({ ticks }) => isTicks(ticks),
    'show-press': () => true,
    column: ({ ticket, words }) => isCount(ticket) && (words === null || typeof words === 'string'),
    section: ({ ticket, section }) => isCount(ticket) && (section === null || isRecord(section)),
    round: ({ ticket, round }) => isCount(ticket) && (round === null || typeof round === 'string' || isRound(round)),
    toolpath: ({ toolpath }) => toolpath === null || isToolpath(toolpath),
    refused: ({ why }) => typeof why === 'string',
    pressing: ({ ticket, part }) => isCount(ticket) && Number.isFinite(part),
    pressed: ({ ticket, press }) => isCount(ticket) && (press === null || isRecord(press)),
};

function isTicks(value: unknown): value is BenchTicks {
    if (!isRecord(value)) return false;
    return Object.values(value).every((tick) => isRecord(tick) && (tick.ends === undefined || isFigure(tick.ends)));
}

function isAmong<Key extends string>(value: unknown, of: Readonly<Record<Key, unknown>>): value is Key {
    return typeof value === 'string' && Object.hasOwn(of, value);
}

function isPicture(view: unknown): view is SentPicture {
    if (!isRecord(view) || view.version !== 1 || typeof view.recipe !== 'string') return false;
    return Array.isArray(view.frames) && isRecord(view.paths) && isRecord(view.pieces);
}

function isRound(value: unknown): value is RoundView {
    if (!isRecord(value) || !isCount(value.frame) || typeof value.words !== 'string') return false;
    return [value.looks, value.surfaces, value.walls, value.paints].every(Array.isArray);
}

function isToolpath(value: unknown): value is ToolpathView {
    if (!isRecord(value) || !isCount(value.step) || !Number.isFinite(value.total) || !Array.isArray(value.works)) return false;
    return value.works.every(
        (work) =>
            isRecord(work) &&
            Array.isArray(work.points) &&
            typeof work.lit === 'string' &&
            work.points.length === 3 * work.lit.length &&
            isFigure(work.dose) &&
            isDigits(work.pace, work.lit.length) &&
            isDigits(work.shade, work.lit.length) &&
            work.points.every(Number.isFinite),
    );
}

function isDigits(value: unknown, count: number): boolean {
    return typeof value === 'string' && value.length === count && /^\d*$/.test(value);
}

function isFigure(value: unknown): value is number {
    return Number.isFinite(value);
}

/** A name of the language: recipe, blank, rule. */
export function isWord(value: unknown): value is string {
    return typeof value === 'string' && value.length <= 4096 && isName(value);
}
