import type { SectionView } from '../../../shared/view/bench-view';
import { editor } from './editor-link';

/** Everything a section depends on. */
export interface SectionWish {
    readonly text: number;
    readonly recipe: string;
    readonly frame: number;
    readonly blank: string;
    readonly y: number;
}

/**
 * Asks for sections one at a time: while an answer is on its way only the newest wish is kept, so
 * that dragging the line never piles up questions.
 */
export class SectionAsker {
    private ticket = 0;
    private asked: { readonly key: string; readonly blank: string } | undefined;
    private answered: string | undefined;
    private next: SectionWish | undefined;

    constructor(private readonly show: (answer: { blank: string; section: SectionView }) => void) {}

    want(wish: SectionWish): void {
        const key = JSON.stringify(wish);
        if (this.asked !== undefined) {
            // Back to what has been asked for: what was wanted in between is wanted no more.
            this.next = key === this.asked.key ? undefined : wish;
            return;
        }
        if (key === this.answered) return;
        const { frame, blank, y } = wish;
        this.asked = { key, blank };
        this.ticket += 1;
        editor.postMessage({ type: 'section', ticket: this.ticket, frame, blank, y });
    }

    answer(ticket: number, section: SectionView | null): void {
        if (ticket !== this.ticket || this.asked === undefined) return;
        const { key, blank } = this.asked;
        this.asked = undefined;
        this.answered = key;
        if (section !== null) this.show({ blank, section });
        const next = this.next;
        this.next = undefined;
        if (next !== undefined) this.want(next);
    }
}
