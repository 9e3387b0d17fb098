/** More deaths than these within the span are no accident: whatever ends the server would end it again. */
const MAX_RESTARTS = 4;
const SPAN_MS = 3 * 60_000;

/** Remembers when the server died, and says whether it is worth starting anew by itself. */
export class ServerCrashes {
    private deaths: number[] = [];

    /** @param now ms */
    isWorthRestarting(now: number): boolean {
        this.deaths = [...this.deaths.filter((death) => now - death <= SPAN_MS), now];
        return this.deaths.length <= MAX_RESTARTS;
    }

    /** Somebody has taken it in hand. */
    forget(): void {
        this.deaths = [];
    }
}
