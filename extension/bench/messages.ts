import type { Where } from '../../shared/quantity/where';
import { isName } from '../../shared/recipe/name';
import type { SectionView } from '../../shared/view/bench-view';
import type { PressView } from '../../shared/view/press-view';
import type { SentPicture } from '../../shared/view/sent-picture';
import type { ToolpathView } from '../../shared/view/toolpath-view';
import { isCount, isRecord, readPlace } from '../read-place';

/** What the extension sends to the bench view. */
export type ToBench =
    | { readonly type: 'picture'; readonly view: SentPicture }
    /** Nothing can be shown at present, in the maker's words. */
    | { readonly type: 'nothing'; readonly why: string }
    | { readonly type: 'cursor'; readonly offset: number; readonly turn: boolean }
    | { readonly type: 'section'; readonly ticket: number; readonly section: SectionView | null }
    /** What lies in the place that was asked for, in words. */
    | { readonly type: 'column'; readonly ticket: number; readonly words: string | null }
    | { readonly type: 'toolpath'; readonly toolpath: ToolpathView | null }
    /** What was to be written could not be, in the maker's words. */
    | { readonly type: 'refused'; readonly why: string }
    /** How far a press is, 0 to 1; then what it shows, or null when it was given up or has nothing to show. */
    | { readonly type: 'pressing'; readonly ticket: number; readonly part: number }
    | { readonly type: 'pressed'; readonly ticket: number; readonly press: PressView | null };

/** What the bench view sends to the extension. */
export type FromBench =
    | { readonly type: 'ready' }
    | { readonly type: 'reveal'; readonly where: Where; readonly focus: boolean }
    | { readonly type: 'recipe'; readonly name: string }
    | { readonly type: 'explain'; readonly rule: string }
    | { readonly type: 'toolpath'; readonly step: number }
    /** Puts a typed number into the text, in the place of what stands at `where` in that version of it. */
    | { readonly type: 'write'; readonly where: Where; readonly textVersion: number; readonly text: string }
    | { readonly type: 'press'; readonly ticket: number; readonly step: number }
    | { readonly type: 'stop-press' }
    | { readonly type: 'section'; readonly ticket: number; readonly frame: number; readonly blank: string; readonly y: number }
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
    if (!isRecord(message)) return undefined;
    switch (message.type) {
        case 'ready':
            return { type: 'ready' };
        case 'reveal': {
            const where = readPlace(message.where);
            return where && { type: 'reveal', where, focus: message.focus === true };
        }
        case 'recipe':
            return isWord(message.name) ? { type: 'recipe', name: message.name } : undefined;
        case 'explain':
            return isWord(message.rule) ? { type: 'explain', rule: message.rule } : undefined;
        case 'toolpath':
            return isCount(message.step) ? { type: 'toolpath', step: message.step } : undefined;
        case 'write': {
            const where = readPlace(message.where);
            const { textVersion, text } = message;
            if (where === undefined || !isCount(textVersion) || typeof text !== 'string' || text.length > 200) return undefined;
            return { type: 'write', where, textVersion, text };
        }
        case 'press':
            return isCount(message.ticket) && isCount(message.step)
                ? { type: 'press', ticket: message.ticket, step: message.step }
                : undefined;
        case 'stop-press':
            return { type: 'stop-press' };
        case 'section': {
            const { ticket, frame, blank, y } = message;
            if (!isCount(ticket) || !isCount(frame) || !isWord(blank) || !Number.isFinite(y)) return undefined;
            return { type: 'section', ticket, frame, blank, y: y as number };
        }
        case 'column': {
            const { ticket, frame, blank, x, y } = message;
            if (!isCount(ticket) || !isCount(frame) || !isWord(blank) || !isFigure(x) || !isFigure(y)) return undefined;
            return { type: 'column', ticket, frame, blank, x, y };
        }
        default:
            return undefined;
    }
}

export function readToBench(message: unknown): ToBench | undefined {
    if (!isRecord(message)) return undefined;
    switch (message.type) {
        case 'picture':
            return isPicture(message.view) ? (message as unknown as ToBench) : undefined;
        case 'nothing':
            return typeof message.why === 'string' ? { type: 'nothing', why: message.why } : undefined;
        case 'toolpath':
            return message.toolpath === null || isToolpath(message.toolpath) ? (message as unknown as ToBench) : undefined;
        case 'refused':
            return typeof message.why === 'string' ? { type: 'refused', why: message.why } : undefined;
        case 'cursor':
            return isCount(message.offset) ? { type: 'cursor', offset: message.offset, turn: message.turn === true } : undefined;
        case 'pressing':
            return isCount(message.ticket) && Number.isFinite(message.part) ? (message as unknown as ToBench) : undefined;
        case 'pressed':
            return isCount(message.ticket) && (message.press === null || isRecord(message.press))
                ? (message as unknown as ToBench)
                : undefined;
        case 'column':
            return isCount(message.ticket) && (message.words === null || typeof message.words === 'string')
                ? { type: 'column', ticket: message.ticket, words: message.words }
                : undefined;
        case 'section':
            return isCount(message.ticket) && (message.section === null || isRecord(message.section))
                ? (message as unknown as ToBench)
                : undefined;
        default:
            return undefined;
    }
}

function isPicture(view: unknown): view is SentPicture {
    if (!isRecord(view) || view.version !== 1 || typeof view.recipe !== 'string') return false;
    return Array.isArray(view.frames) && isRecord(view.paths) && isRecord(view.pieces);
}

function isToolpath(value: unknown): value is ToolpathView {
    if (!isRecord(value) || !isCount(value.step) || !Number.isFinite(value.total) || !Array.isArray(value.works)) return false;
    return value.works.every(
        (work) =>
            isRecord(work) &&
            Array.isArray(work.points) &&
            typeof work.lit === 'string' &&
            work.points.length === 3 * work.lit.length &&
            work.points.every(Number.isFinite),
    );
}

function isFigure(value: unknown): value is number {
    return Number.isFinite(value);
}

/** A name of the language: recipe, blank, rule. */
export function isWord(value: unknown): value is string {
    return typeof value === 'string' && value.length <= 4096 && isName(value);
}
