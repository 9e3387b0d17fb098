import type { Hideable } from '../../../../shared/view/hideable';
import type { RoundView } from '../../../../shared/view/round-view';

/** Everything that an answer depends on. */
export interface RoundWish {
    readonly text: number;
    readonly recipe: string;
    readonly frame: number;
    readonly blank: string;
    readonly hidden: readonly Hideable[];
}

/** More are not kept: one piece can be some megabytes. */
const mostKept = 8;

/**
 * Pieces in the round as they were answered, each asked for once. Of another text they are asked for only when the typing rests: the worker does one
 * thing after the other, and the flat picture of the next key is not to wait for it.
 */
export class RoundAsker {
    private ticket = 0;
    /** The text that may be asked about. */
    private text: number | undefined;
    /** A newer one, of which it is not known yet whether it stays. */
    private coming: number | undefined;
    private stopWaiting = (): void => {};
    private readonly asked = new Map<number, string>();
    private readonly kept = new Map<string, RoundView | string>();

    constructor(
        private readonly send: (ticket: number, wish: RoundWish) => void,
        private readonly changed: () => void,
        private readonly atRest: (then: () => void) => () => void,
    ) {}

    /** The piece, or why there is none; undefined while its answer is on its way. */
    get(wish: RoundWish): RoundView | string | undefined {
        const key = JSON.stringify(wish);
        const known = this.kept.get(key);
        if (known !== undefined) return known;
        this.text ??= wish.text;
        if (wish.text !== this.text) this.waitFor(wish.text);
        else if (![...this.asked.values()].includes(key)) {
            this.ticket += 1;
            this.asked.set(this.ticket, key);
            this.send(this.ticket, wish);
        }
        return undefined;
    }

    private waitFor(text: number): void {
        if (this.coming === text) return;
        this.coming = text;
        this.stopWaiting();
        this.stopWaiting = this.atRest(() => {
            this.text = text;
            this.coming = undefined;
            this.changed();
        });
    }

    answer(ticket: number, round: RoundView | string | null): void {
        const key = this.asked.get(ticket);
        this.asked.delete(ticket);
        if (key === undefined) return;
        this.kept.set(key, round ?? 'It could not be worked out.');
        for (const [oldest] of this.kept) if (this.kept.size > mostKept) this.kept.delete(oldest);
        this.changed();
    }
}
