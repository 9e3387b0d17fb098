import type { PressView } from '../../../../shared/view/press-view';
import { editor } from '../editor-link';

/** Where the press of one inlay stands. */
export interface PressState {
    /** Version of the text it was asked for. */
    readonly text: number;
    /** The part that is done, 0 to 1; absent when nothing is on its way. */
    readonly part?: number;
    /** The last answer, though it may be of an earlier text; null when there is none to be had. */
    readonly press?: PressView | null;
}

export type Presses = Readonly<Record<number, PressState>>;

/** Has the halves pressed when the maker asks, and again whenever the text has changed since. */
export class PressAsker {
    private ticket = 0;
    private asked: { readonly ticket: number; readonly step: number; readonly text: number } | undefined;

    constructor(private readonly show: (step: number, state: PressState) => void) {}

    ask(step: number, text: number, before: PressState | undefined): void {
        this.ticket += 1;
        this.asked = { ticket: this.ticket, step, text };
        this.show(step, { ...before, text, part: 0 });
        editor.postMessage({ type: 'press', ticket: this.ticket, step });
    }

    /** Asks anew for the first press that is of an earlier text; the others follow as answers come. */
    keepUp(presses: Presses, text: number): void {
        const old = Object.entries(presses).find(([, state]) => state.press !== undefined && state.text !== text);
        if (old !== undefined && this.asked?.text !== text) this.ask(Number(old[0]), text, old[1]);
    }

    stop(): void {
        if (this.asked !== undefined) editor.postMessage({ type: 'stop-press' });
    }

    progress(ticket: number, part: number, presses: Presses): void {
        if (ticket !== this.asked?.ticket) return;
        const { step, text } = this.asked;
        this.show(step, { ...presses[step], text, part });
    }

    answer(ticket: number, press: PressView | null, presses: Presses): void {
        if (ticket !== this.asked?.ticket) return;
        const { step, text } = this.asked;
        this.asked = undefined;
        // One that was stopped leaves what was there before.
        const known = press ?? presses[step]?.press ?? null;
        this.show(step, { text, press: known });
    }
}
