import type { BenchView, PieceView } from '../../../shared/view/bench-view';
import { pathsOf } from '../../../shared/view/paths-of';
import type { SentPicture } from '../../../shared/view/sent-picture';
import { remembered } from '../page-parts';

type Parts = Pick<SentPicture, 'paths' | 'pieces'>;

/**
 * Puts pictures together: parts that were left out are taken from those before, and whatever is
 * equal is the same object, so that only what differs is drawn anew.
 */
export class PictureTaker {
    private before: BenchView | undefined;
    private readonly last: Parts[] = [];

    take({ pieces, ...sent }: SentPicture): BenchView {
        const kept: Record<string, PieceView> = {};
        const frames = sent.frames.map(({ step, pieces: names }) => ({
            step,
            pieces: names.flatMap((name) => {
                const piece = pieces[name] ?? this.last.find((parts) => name in parts.pieces)?.pieces[name];
                if (piece !== undefined) kept[name] = piece;
                return piece === undefined ? [] : [piece];
            }),
        }));
        const paths: Record<string, string> = {};
        for (const name of pathsOf({ ...sent, frames })) {
            const data = sent.paths[name] ?? this.last.find((parts) => name in parts.paths)?.paths[name];
            if (data !== undefined) paths[name] = data;
        }
        this.last.unshift({ paths, pieces: kept });
        if (this.last.length > remembered) this.last.pop();
        const steps = sent.more === true ? withTrades(sent.steps, this.before?.steps) : sent.steps;
        this.before = shared(this.before, { ...sent, steps, frames, paths }) as BenchView;
        return this.before;
    }
}

/** Until the next picture has it, what other numbers of passes cost stays as it was. */
function withTrades(steps: BenchView['steps'], before: BenchView['steps'] = []): BenchView['steps'] {
    return steps.map((step) => {
        const trade = before.find(({ id }) => id === step.id)?.trade;
        return trade === undefined ? step : { ...step, trade };
    });
}

function shared(before: unknown, after: unknown): unknown {
    if (Object.is(before, after)) return before;
    if (typeof before !== 'object' || typeof after !== 'object' || before === null || after === null) return after;
    if (Array.isArray(before) !== Array.isArray(after)) return after;
    const [old, fresh] = [before as Record<string, unknown>, after as Record<string, unknown>];
    const keys = Object.keys(fresh);
    let same = keys.length === Object.keys(old).length;
    const mixed: Record<string, unknown> = Array.isArray(after) ? ([] as never) : {};
    for (const key of keys) {
        mixed[key] = shared(old[key], fresh[key]);
        if (mixed[key] !== old[key]) same = false;
    }
    return same ? before : mixed;
}
