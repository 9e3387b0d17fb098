import './styles/bench.css';
import { render } from 'preact';
import type { BenchView, SectionView } from '../../../shared/view/bench-view';
import { readToBench, type ToBench } from '../messages';
import { type Actions, App } from './app';
import { editor, tellRefused } from './editor-link';
import { PressAsker } from './inlay/press-asker';
import { askAgain, keep, keptBefore, noteMoved, noteScroll, scrollBack } from './keep';
import { NewestAsker } from './newest-asker';
import { atRest } from './round/at-rest';
import { RoundAsker } from './round/round-asker';
import { type BenchState, chosenFrame, chosenPiece, cutOf, frameKeys, stepAt } from './state';
import { PictureTaker } from './take-picture';

const root = document.getElementById('bench')!;
let state = keptBefore();
const pictures = new PictureTaker();

/** Everything that an answer about a piece depends on. */
interface OfPiece {
    readonly text: number;
    readonly recipe: string;
    readonly frame: number;
    readonly blank: string;
}

const sections = new NewestAsker<OfPiece & { readonly y: number }, SectionView>(
    (ticket, { frame, blank, y }) => editor.postMessage({ type: 'section', ticket, frame, blank, y }),
    ({ blank }, section) => change({ cutSection: { blank, section } }),
);

const columns = new NewestAsker<OfPiece & { readonly x: number; readonly y: number }, string>(
    (ticket, { frame, blank, x, y }) => editor.postMessage({ type: 'column', ticket, frame, blank, x, y }),
    ({ blank, x, y }, words) => change({ lies: { blank, x, y, words } }),
);

const presses = new PressAsker((step, press) => change({ presses: { ...state.presses, [step]: press } }));

const rounds = new RoundAsker(
    (ticket, { frame, blank, hidden }) => editor.postMessage({ type: 'round', ticket, frame, blank, hidden }),
    () => change({}),
    atRest,
);

const actions: Actions = {
    rounds,
    // A frame shows the piece that its step works on, until another is chosen by hand.
    chooseFrame: (frameKey) => change({ frameKey, blank: undefined }),
    chooseBlank: (blank) => change({ blank }),
    look: (blank, window) => change({ windows: { ...state.windows, [blank]: window } }),
    pointAt: (blank, x, y) => change({ place: { blank, x, y } }),
    hover: (blank, x, y) => {
        // Nothing is drawn before there is something to say.
        state = { ...state, place: { blank, x, y } };
        askForColumn();
    },
    moveCut: (blank, y) => change({ cuts: { ...state.cuts, [blank]: y } }),
    press: (step) => presses.ask(step, state.view?.textVersion ?? 0, state.presses[step]),
    stopPress: () => presses.stop(),
    setStart: (start) => change({ start }),
    hide: (what, isHidden) => change({ hidden: [...state.hidden.filter((each) => each !== what), ...(isHidden ? [what] : [])] }),
};

function change(part: Partial<BenchState>): void {
    state = { ...state, ...part };
    askForSection();
    askForColumn();
    // Nothing in a picture of an earlier text can be written into the text of now.
    root.classList.toggle('of-earlier-text', state.trouble !== undefined);
    render(<App state={state} actions={actions} />, root);
    scrollBack();
    keep(state);
}

/** A section line that was moved needs its section from the server, for this frame of this text. */
function askForSection(): void {
    const { view } = state;
    if (view === undefined) return;
    const frame = chosenFrame(state, view);
    const piece = view.frames[frame] === undefined ? undefined : chosenPiece(state, view, view.frames[frame]);
    const y = piece === undefined ? undefined : cutOf(state, piece.blank);
    if (piece === undefined || y === undefined) return;
    sections.want({ text: view.textVersion, recipe: view.recipe, frame, blank: piece.blank, y });
}

/** What lies in the place that is pointed at, in this frame of this text. */
function askForColumn(): void {
    const { view, place } = state;
    // A press would begin anew for every place that the pointer passes.
    if (view === undefined || place === undefined || isPressing(state)) return;
    const frame = chosenFrame(state, view);
    const piece = view.frames[frame] === undefined ? undefined : chosenPiece(state, view, view.frames[frame]);
    if (piece?.blank !== place.blank) return;
    columns.want({ text: view.textVersion, recipe: view.recipe, frame, ...place });
}

/** The press was asked for by a command, perhaps before there was a picture. */
let pressWished = false;

function showPress(): void {
    const inlay = state.view?.inlays[0];
    if (!pressWished || inlay === undefined) return;
    pressWished = false;
    actions.press(inlay.step);
    root.querySelector('.press')?.scrollIntoView({ block: 'start' });
}

function isPressing({ presses }: BenchState): boolean {
    return Object.values(presses).some(({ part }) => part !== undefined);
}

function receive(message: ToBench | undefined): void {
    switch (message?.type) {
        case 'picture':
            showPicture(pictures.take(message.view));
            break;
        case 'nothing':
            change({ trouble: message.why });
            break;
        case 'toolpath':
            change({ toolpath: { view: message.toolpath, text: state.view?.textVersion ?? 0 } });
            break;
        case 'refused':
            tellRefused();
            change({ refused: message.why });
            break;
        case 'cursor':
            followCursor(message.offset, message.turn);
            break;
        case 'run':
            change({ ticks: message.ticks });
            break;
        case 'moved':
            noteMoved(message.uri);
            change({});
            break;
        case 'show-press':
            pressWished = true;
            showPress();
            break;
        case 'pressing':
            presses.progress(message.ticket, message.part, state.presses);
            break;
        case 'pressed':
            presses.answer(message.ticket, message.press, state.presses);
            if (state.view !== undefined) presses.keepUp(state.presses, state.view.textVersion);
            break;
        case 'round':
            rounds.answer(message.ticket, message.round);
            break;
        case 'section':
            sections.answer(message.ticket, message.section);
            break;
        case 'column':
            columns.answer(message.ticket, message.words);
            break;
    }
}

/** Of a broken text the picture before it is kept: half a recipe would come and go with every key. */
function showPicture(view: BenchView): void {
    const before = state.view;
    if (view.stale !== undefined && before?.recipe === view.recipe && before.stale === undefined) {
        change({ trouble: view.stale });
        return;
    }
    if (state.view === undefined) askAgain(view);
    change({
        view,
        ...(state.view === undefined || view.recipe === state.view.recipe ? {} : { presses: {} }),
        trouble: undefined,
        refused: undefined,
        lit: cursor === undefined ? undefined : stepAt(view, cursor),
    });
    presses.keepUp(state.presses, view.textVersion);
    showPress();
}

/** Where the text cursor is; what it lies in may change with the text. */
let cursor: number | undefined;

function followCursor(offset: number, turn: boolean): void {
    cursor = offset;
    const { view } = state;
    const lit = view === undefined ? undefined : stepAt(view, offset);
    if (lit === state.lit) return;
    const frame = view?.frames.findIndex(({ step }) => step === lit) ?? -1;
    const frameKey = turn && view !== undefined && frame >= 0 ? frameKeys(view)[frame] : undefined;
    change({ lit, ...(frameKey === undefined ? {} : { frameKey, blank: undefined }) });
}

// What was dragged or typed here was written into the text, which takes it back.
addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.target instanceof HTMLInputElement) return;
    const key = event.key.toLowerCase();
    const name = key === 'y' || (key === 'z' && event.shiftKey) ? 'redo' : key === 'z' ? 'undo' : undefined;
    if (name === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    editor.postMessage({ type: 'command', name });
});
addEventListener('scrollend', () => {
    noteScroll();
    keep(state);
});
addEventListener('message', ({ data }) => receive(readToBench(data)));
render(<App state={state} actions={actions} />, root);
editor.postMessage({ type: 'ready' });
