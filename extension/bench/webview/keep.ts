import type { BenchView } from '../../../shared/view/bench-view';
import { type KeptState, readKeptState } from '../kept-state';
import { editor } from './editor-link';
import { isShown } from './picture/shown';
import { type BenchState, emptyState } from './state';

/** What the editor has kept of this panel: while its page was away, over a restart, or as it was opened. */
export const kept: KeptState | undefined =
    readKeptState(editor.getState()) ?? readKeptState(JSON.parse(document.body.dataset.kept ?? 'null'));

/** The state to begin with. Presses that were shown are of an earlier text, and are therefore made again. */
export function keptBefore(): BenchState {
    return {
        ...emptyState,
        windows: kept?.windows ?? {},
        cuts: kept?.cuts ?? {},
        presses: Object.fromEntries((kept?.presses ?? []).map((step) => [step, { text: -1, press: null }])),
        hidden: (kept?.hidden ?? []).filter(isShown),
        ...(kept?.frame === undefined ? {} : { frameKey: kept.frame }),
        ...(kept?.blank === undefined ? {} : { blank: kept.blank }),
        ...(kept?.start === undefined ? {} : { start: kept.start }),
    };
}

/** Where the file lies: elsewhere than at first, once it was moved. */
let liesAt = kept?.uri ?? '';

export function noteMoved(uri: string): void {
    liesAt = uri;
}

/** Hands the editor what is chosen, so that it outlives the page. */
export function keep({ view, frameKey, blank, windows, cuts, toolpath, presses, start, hidden }: BenchState): void {
    if (kept === undefined) return;
    const recipe = view?.recipe ?? kept.recipe;
    const way = toolpath === undefined ? kept.toolpath : toolpath.view?.step;
    const pressed = Object.entries(presses).flatMap(([step, { press }]) => (press === undefined ? [] : [Number(step)]));
    const scroll = goingTo ?? scrolled;
    const state: KeptState = {
        uri: liesAt,
        windows,
        cuts,
        scroll,
        presses: pressed,
        ...(hidden.length === 0 ? {} : { hidden }),
        ...(recipe === undefined ? {} : { recipe }),
        ...(frameKey === undefined ? {} : { frame: frameKey }),
        ...(blank === undefined ? {} : { blank }),
        ...(way === undefined ? {} : { toolpath: way }),
        ...(start === undefined ? {} : { start }),
    };
    editor.setState(state);
}

/** A toolpath that was shown is asked for again: once, when the first picture is there. */
export function askAgain({ steps }: BenchView): void {
    if (steps.some(({ index }) => index === kept?.toolpath)) editor.postMessage({ type: 'toolpath', step: kept!.toolpath! });
}

/** How far down the page was; the page grows to that length only bit by bit, and until then whoever scrolls has the last word. */
let goingTo = kept?.scroll;

/** How far down it is now: noted as it is scrolled, since asking for it lays the whole page out. */
let scrolled = 0;

export function noteScroll(): void {
    scrolled = document.scrollingElement?.scrollTop ?? 0;
}

export function scrollBack(): void {
    const page = document.scrollingElement;
    if (goingTo === undefined || page === null) return;
    page.scrollTop = goingTo;
    if (page.scrollTop < goingTo - 1) return;
    scrolled = goingTo;
    goingTo = undefined;
}

// What comes in above later would otherwise push the place down by as much.
if (goingTo !== undefined) document.documentElement.style.overflowAnchor = 'none';

for (const sign of ['wheel', 'pointerdown', 'keydown']) {
    const stop = () => {
        goingTo = undefined;
        document.documentElement.style.overflowAnchor = '';
    };
    addEventListener(sign, stop, { passive: true, once: true });
}
