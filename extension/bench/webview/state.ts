import type { BenchView, FrameView, PieceView, SectionView, StepView } from '../../../shared/view/bench-view';
import type { ToolpathView } from '../../../shared/view/toolpath-view';
import type { BenchTicks } from '../messages';
import type { Presses } from './inlay/press-asker';
import type { Shown } from './picture/shown';
import { type Window, wholeWindow } from './picture/zoom';

/** Everything the page shows. Replaced as a whole at each change, so that drawing depends on nothing else. */
export interface BenchState {
    /** What is ticked in the checklist. */
    readonly ticks: BenchTicks;
    readonly view?: BenchView | undefined;
    /** Why there is no picture, or why the one shown is of an earlier text. */
    readonly trouble?: string | undefined;
    /** The head's way through a step, as it was last asked for, and the text it is of. */
    readonly toolpath?: { readonly view: ToolpathView | null; readonly text: number } | undefined;
    /** Why what was typed or dragged here was not written. */
    readonly refused?: string | undefined;
    /** The chosen frame by key, so that it stays chosen when steps are added before it. */
    readonly frameKey?: string | undefined;
    /** The piece chosen by hand; otherwise the one that the step works on. */
    readonly blank?: string | undefined;
    /** Index of the step under the text cursor. */
    readonly lit?: number | undefined;
    readonly windows: Readonly<Record<string, Window>>;
    /** Where the maker has drawn the section line, mm from the top, by blank. */
    readonly cuts: Readonly<Record<string, number>>;
    /** Inlays whose halves the maker has had pressed together, by step. */
    readonly presses: Presses;
    /** What the maker does not want to see in the pictures of the piece. */
    readonly hidden: readonly Shown[];
    /** When the run begins, as it is written in the day book's field; now, until it is set. */
    readonly start?: string;
    /** The last section that was made there. */
    readonly cutSection?: { readonly blank: string; readonly section: SectionView };
    /** The place that the maker points at, mm, and what lies there in words. */
    readonly place?: { readonly blank: string; readonly x: number; readonly y: number } | undefined;
    readonly lies?: { readonly blank: string; readonly x: number; readonly y: number; readonly words: string } | undefined;
}

export const emptyState: BenchState = { ticks: {}, windows: {}, cuts: {}, presses: {}, hidden: [] };

/** Stays the same while a step keeps its kind and title, however many steps come before it. */
export function frameKeys(view: BenchView): string[] {
    const seen = new Map<string, number>();
    return view.frames.map((frame) => {
        const step = stepOf(view, frame);
        const name = step === undefined ? 'start' : `${step.kind} ${step.title}`;
        const count = (seen.get(name) ?? 0) + 1;
        seen.set(name, count);
        return `${name} ${count}`;
    });
}

export function stepOf(view: BenchView, frame: FrameView): StepView | undefined {
    return view.steps.find((step) => step.index === frame.step);
}

/** Index of the chosen frame; the last one when none has been chosen or the chosen one is gone. */
export function chosenFrame(state: BenchState, view: BenchView): number {
    const at = state.frameKey === undefined ? -1 : frameKeys(view).indexOf(state.frameKey);
    return at >= 0 ? at : view.frames.length - 1;
}

/** Pieces of a frame that still lie on the bench by themselves. */
export function piecesOf(frame: FrameView | undefined): readonly PieceView[] {
    return (frame?.pieces ?? []).filter((piece) => !piece.gone);
}

/** The piece in the large picture: the one chosen by hand, else the one the step works on. */
export function chosenPiece(state: BenchState, view: BenchView, frame: FrameView): PieceView | undefined {
    const pieces = piecesOf(frame);
    const worked = stepOf(view, frame)?.blank;
    return pieces.find((piece) => piece.blank === state.blank) ?? pieces.find((piece) => piece.blank === worked) ?? pieces[0];
}

export function windowOf(state: BenchState, blank: string): Window {
    return Object.hasOwn(state.windows, blank) ? state.windows[blank]! : wholeWindow;
}

/** Where the section line lies on a blank, mm from its top; undefined where it was not moved. A blank may be called `constructor`. */
export function cutOf(state: BenchState, blank: string): number | undefined {
    return Object.hasOwn(state.cuts, blank) ? state.cuts[blank] : undefined;
}

/** The step whose text the cursor is in: the last one that begins before it. */
export function stepAt(view: BenchView, offset: number): number | undefined {
    const before = view.steps.filter((step) => step.where.uri === view.uri && step.where.offset <= offset);
    return before.length === 0 ? undefined : before.reduce((a, b) => (b.where.offset >= a.where.offset ? b : a)).index;
}
