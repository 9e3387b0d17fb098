/**
 * Asks one question at a time: while an answer is on its way only the newest wish is kept, so that dragging or hovering
 * never piles up questions.
 */
export class NewestAsker<Wish, Answer> {
    private ticket = 0;
    private asked: { readonly key: string; readonly wish: Wish } | undefined;
    private answered: string | undefined;
    private next: Wish | undefined;

    /**
     * @param send puts the question; its answer comes back under the same ticket
     * @param show takes an answer, with what was wished
     */
    constructor(
        private readonly send: (ticket: number, wish: Wish) => void,
        private readonly show: (wish: Wish, answer: Answer) => void,
    ) {}

    /** @param wish everything that the answer depends on */
    want(wish: Wish): void {
        const key = JSON.stringify(wish);
        if (this.asked !== undefined) {
            // Back to what has been asked for: what was wanted in between is wanted no more.
            this.next = key === this.asked.key ? undefined : wish;
            return;
        }
        if (key === this.answered) return;
        this.asked = { key, wish };
        this.ticket += 1;
        this.send(this.ticket, wish);
    }

    answer(ticket: number, answer: Answer | null): void {
        if (ticket !== this.ticket || this.asked === undefined) return;
        const { key, wish } = this.asked;
        this.asked = undefined;
        this.answered = key;
        if (answer !== null) this.show(wish, answer);
        const next = this.next;
        this.next = undefined;
        if (next !== undefined) this.want(next);
    }
}
