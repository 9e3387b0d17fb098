import type { Burnt } from '../../shared/view/protocol';
import type { DoneStep, Measured } from '../../shared/view/run-lines';

/** A step that is done. Times are milliseconds since 1970, so that a wait goes on while the editor is closed. */
export interface Tick extends DoneStep {
    readonly label: string;
    readonly at: number;
    /** When the wait that began with the tick is over. */
    readonly ends?: number;
    readonly announced?: boolean;
    /** What was waited for, in the recipe's words. */
    readonly reason?: string;
    /** The maker has seen that the wait is over. */
    readonly seen?: boolean;
}

interface Tickable {
    readonly id: string;
    readonly label: string;
    readonly wait?: number;
    readonly detail?: string;
    readonly burnt?: Burnt;
}

export type Ticks = Readonly<Record<string, Tick>>;

/** The part of the editor's memory that is needed here. */
export interface Memory {
    get<T>(key: string): T | undefined;
    update(key: string, value: unknown): Thenable<void>;
}

/** A wait that is over. */
export interface Overdue {
    readonly job: string;
    readonly id: string;
    readonly tick: Tick;
}

const KEY = 'kerfbook.ticks';

/** What is ticked, by job (a recipe of a file) and step. Kept in the editor's memory of the workspace. */
export class TickBook {
    private readonly listeners = new Set<() => void>();

    constructor(private readonly memory: Memory) {}

    /** Calls `listener` whenever a tick has changed; what comes back ends that. */
    onDidChange(listener: () => void): { dispose(): void } {
        this.listeners.add(listener);
        return { dispose: () => this.listeners.delete(listener) };
    }

    of(job: string): Ticks {
        return this.all()[job] ?? {};
    }

    tick(job: string, item: Tickable, now: number, measured: readonly Measured[] = []): void {
        const waits = item.wait !== undefined && Number.isFinite(item.wait) && item.wait > 0;
        const reason = item.detail === undefined || item.detail === '' ? {} : { reason: item.detail };
        const wait = waits ? { ends: now + item.wait! * 1000, ...reason } : {};
        const burnt = item.burnt === undefined ? {} : { burnt: item.burnt };
        const found = measured.length === 0 ? {} : { measured };
        this.write(job, { ...this.of(job), [item.id]: { label: item.label, at: now, ...wait, ...burnt, ...found } });
    }

    /** Adds what was measured of a step that is ticked. */
    measure(job: string, id: string, measured: readonly Measured[]): void {
        const tick = this.of(job)[id];
        if (tick === undefined || measured.length === 0) return;
        this.write(job, { ...this.of(job), [id]: { ...tick, measured: [...(tick.measured ?? []), ...measured] } });
    }

    untick(job: string, id: string): void {
        const { [id]: _gone, ...rest } = this.of(job);
        this.write(job, rest);
    }

    /** Files lie elsewhere now: what is ticked goes with them. */
    move(movedTo: (uri: string) => string): void {
        const all = this.all();
        const moved = Object.entries(all).map(([job, ticks]): [string, Ticks] => [movedJob(job, movedTo), ticks]);
        if (moved.some(([job]) => !Object.hasOwn(all, job))) this.keep(Object.fromEntries(moved));
    }

    /**
     * A wait whose length was changed in the recipe counts on from its tick.
     * @returns whether any is over at another time now
     */
    adjust(job: string, items: readonly Tickable[], now: number): boolean {
        const ticks = this.of(job);
        const changed = items.flatMap(({ id, wait }): [string, Tick][] => {
            const tick = ticks[id];
            if (tick?.ends === undefined || wait === undefined || !(wait > 0) || !Number.isFinite(wait)) return [];
            const { announced: _said, seen: _seen, ...rest } = tick;
            const ends = tick.at + wait * 1000;
            if (ends === tick.ends) return [];
            return [[id, ends > now ? { ...rest, ends } : { ...tick, ends }]];
        });
        if (changed.length > 0) this.write(job, { ...ticks, ...Object.fromEntries(changed) });
        return changed.length > 0;
    }

    /** Jobs of a file in which something is ticked. */
    jobsOf(uri: string): string[] {
        return Object.keys(this.all()).filter((job) => placeOf(job).uri === uri);
    }

    reset(job: string): void {
        this.write(job, {});
    }

    /** Puts ticks back that were there before. */
    restore(job: string, ticks: Ticks): void {
        this.write(job, ticks);
    }

    /**
     * Waits that are over and have not been announced; from now on they count as announced.
     * @param speaksFor of which jobs anything is said
     */
    takeOverdue(now: number, speaksFor: (job: string) => boolean = () => true): Overdue[] {
        const overdue = this.over(now).filter(({ job, tick }) => tick.announced !== true && speaksFor(job));
        for (const { job, id, tick } of overdue) this.write(job, { ...this.of(job), [id]: { ...tick, announced: true } });
        return overdue;
    }

    /** Jobs with a wait that is over. */
    jobsOver(now: number): string[] {
        return [...new Set(this.over(now).map(({ job }) => job))];
    }

    /** Waits of every job that are over and that the maker has not been seen to know of. */
    unseen(now: number): Overdue[] {
        return this.over(now).filter(({ tick }) => tick.seen !== true);
    }

    /** The maker has looked at what is over. */
    see(overdue: readonly Overdue[]): void {
        for (const { job, id } of overdue) {
            const tick = this.of(job)[id];
            if (tick !== undefined) this.write(job, { ...this.of(job), [id]: { ...tick, seen: true } });
        }
    }

    private over(now: number): Overdue[] {
        return Object.entries(this.all()).flatMap(([job, ticks]) =>
            Object.entries(ticks).flatMap(([id, tick]) =>
                tick.ends !== undefined && tick.ends <= now ? [{ job, id, tick }] : [],
            ),
        );
    }

    isWaiting(now: number): boolean {
        return Object.values(this.all()).some((ticks) =>
            Object.values(ticks).some(({ ends }) => ends !== undefined && ends > now),
        );
    }

    private all(): Readonly<Record<string, Ticks>> {
        return this.memory.get<Record<string, Ticks>>(KEY) ?? {};
    }

    private write(job: string, ticks: Ticks): void {
        const { [job]: _old, ...others } = this.all();
        this.keep(Object.keys(ticks).length === 0 ? others : { ...others, [job]: ticks });
    }

    private keep(all: Readonly<Record<string, Ticks>>): void {
        void this.memory.update(KEY, all);
        for (const listener of this.listeners) listener();
    }
}

/** The same recipe of a file that lies elsewhere now. */
export function movedJob(job: string, movedTo: (uri: string) => string): string {
    const { uri, recipe } = placeOf(job);
    return jobOf(movedTo(uri), recipe);
}

export function jobOf(uri: string, recipe: string): string {
    return `${uri}#${recipe}`;
}

export function placeOf(job: string): { readonly uri: string; readonly recipe: string } {
    const at = job.lastIndexOf('#');
    return { uri: job.slice(0, at), recipe: job.slice(at + 1) };
}
