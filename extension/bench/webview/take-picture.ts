import type { BenchView } from '../../../shared/view/bench-view';
import { pathsOf } from '../../../shared/view/paths-of';

/**
 * A new picture laid over the one before it: path data that was left out is taken from there, and
 * whatever is equal is the same object, so that only what differs is drawn anew.
 */
export function takePicture(before: BenchView | undefined, view: BenchView): BenchView {
    if (before === undefined) return view;
    const paths: Record<string, string> = {};
    for (const name of pathsOf(view)) {
        const data = view.paths[name] ?? before.paths[name];
        if (data !== undefined) paths[name] = data;
    }
    return shared(before, { ...view, paths }) as BenchView;
}

function shared(before: unknown, after: unknown): unknown {
    if (Object.is(before, after)) return before;
    if (typeof before !== 'object' || typeof after !== 'object' || before === null || after === null) return after;
    if (Array.isArray(before) !== Array.isArray(after)) return after;
    const [old, fresh] = [before as Record<string, unknown>, after as Record<string, unknown>];
    const keys = Object.keys(fresh);
    let same = keys.length === Object.keys(old).length;
    for (const key of keys) {
        // The view is fresh out of a message: nobody else holds it.
        fresh[key] = shared(old[key], fresh[key]);
        if (fresh[key] !== old[key]) same = false;
    }
    return same ? before : after;
}
