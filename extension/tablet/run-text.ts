import { runBlock } from '../../shared/recipe/run-block';
import type { TabletJob } from '../../shared/tablet/tablet-job';
import { filled } from '../../shared/tablet/tablet-words';
import { type DoneStep, runLines } from '../../shared/view/run-lines';
import { type KeptRun, measuredWords } from './kept-run';

/** Letters of a note that a run keeps. */
const LONGEST = 500;

/** The run as recipe text: what was ticked and measured, and the notes with the steps that they are about. */
export function runText(job: TabletJob, { date, note, steps }: KeptRun): string {
    const done: Record<string, DoneStep> = {};
    const notes = note.trim() === '' ? [] : [note];
    for (const step of job.steps) {
        const kept = steps[step.id] ?? {};
        const measured = measuredWords(step, kept);
        if (kept.at !== undefined || measured.length > 0)
            done[step.id] = { ...(kept.burnt === undefined ? {} : { burnt: kept.burnt }), measured };
        if ((kept.note ?? '').trim() !== '') notes.push(`${step.label}: ${kept.note}`);
        if ((kept.photos ?? '').trim() !== '') notes.push(`${filled(job.words.photos, step.label)}: ${kept.photos}`);
    }
    const lines = runLines(
        done,
        job.steps.map(({ id }) => id),
    );
    const { recipe, revision, laser, mark } = job;
    return runBlock({
        ...{ recipe, date, revision },
        ...(laser === undefined ? {} : { laser }),
        ...(mark === undefined ? {} : { plan: mark }),
        lines: lines.map((line) => [job.kinds[line.split(' ', 1)[0]!], line].filter(Boolean).join(' ')),
        notes: notes.map((each) => each.slice(0, LONGEST)),
    });
}
