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

/** Pieces in the round as they were answered, each asked for once. */
export class RoundAsker {
    private ticket = 0;
    private readonly asked = new Map<number, string>();
    private readonly kept = new Map<string, RoundView | string>();

    constructor(
        private readonly send: (ticket: number, wish: RoundWish) => void,
        private readonly changed: () => void,
    ) {}

    /** The piece, or why there is none; undefined while its answer is on its way. */
    get(wish: RoundWish): RoundView | string | undefined {
        const key = JSON.stringify(wish);
        const known = this.kept.get(key);
        if (known === undefined && ![...this.asked.values()].includes(key)) {
            this.ticket += 1;
            this.asked.set(this.ticket, key);
            this.send(this.ticket, wish);
        }
        return known;
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
