import type { Recipe } from '../recipe/recipe';
import type { Run } from '../recipe/run';
import { changesOf } from './change';
import { type Figure, word } from './figure';
import type { ThingReview } from './review';
import { tell } from './written';

/** Runs that only one version has, or of which the lines differ. Known again by their day, and by order within a day. */
export function compareRuns(before: Recipe, after: Recipe): ThingReview[] {
    const old = byDay(before.runs);
    const now = byDay(after.runs);
    return [...new Set([...now.keys(), ...old.keys()])].flatMap((thing): ThingReview[] => {
        const was = old.get(thing);
        const is = now.get(thing);
        const changes = changesOf(was === undefined ? [] : runLines(was), is === undefined ? [] : runLines(is));
        const status = was === undefined ? 'added' : is === undefined ? 'removed' : 'changed';
        return status === 'changed' && changes.length === 0 ? [] : [{ thing, status, changes }];
    });
}

/** The second run of a day is "run 2026-11-20 (2)". */
export function byDay(runs: readonly Run[]): Map<string, Run> {
    const named = new Map<string, Run>();
    for (const run of runs) {
        const name = `run ${run.date.value}`;
        let free = name;
        for (let nth = 2; named.has(free); nth++) free = `${name} (${nth})`;
        named.set(free, run);
    }
    return named;
}

function runLines({ revision, laser, burnt, notes, temperature, photos = [], links = [] }: Run): Figure[] {
    return [
        ...(revision === undefined ? [] : [{ label: 'issue', ...tell(revision)! }]),
        ...(laser === undefined ? [] : [word('laser', laser.name)]),
        ...burnt.flatMap(({ step, where: _, sheetFile: _file, ...rest }) => {
            const told = tell(rest);
            return told === undefined ? [] : [{ label: step.value ?? 'a step', ...told }];
        }),
        ...(temperature === undefined ? [] : [{ label: 'temperature', ...tell(temperature)! }]),
        ...photos.map((photo) => word('photo', photo)),
        ...links.map((link) => word('link', link)),
        ...notes.map((note) => word('note', note)),
    ];
}
