import { useState } from 'preact/hooks';
import { isoMoment, momentOf, showWhen } from '../../../../shared/quantity/calendar';
import { showTime } from '../../../../shared/quantity/show';
import type { BenchView } from '../../../../shared/view/bench-view';
import type { RunView } from '../../../../shared/view/run-view';

interface DayBookProps {
    readonly view: BenchView;
    /** The start that the maker has set, as it is written in the field. */
    readonly begun: string | undefined;
    readonly begin: (start: string) => void;
    readonly choose: (step: number) => void;
}

/** Who is at the bench when, for all the pieces, from a start that the maker sets; now, until then. */
export function DayBook({ view, begun, begin, choose }: DayBookProps) {
    const [opened] = useState(now);
    const written = begun ?? opened;
    const { run, make } = view;
    if (run.sittings.length === 0) return null;
    const start = momentOf(written);
    return (
        <section aria-labelledby="day-book-heading" class="day-book">
            <h2 id="day-book-heading">{make === 1 ? 'Day book' : `Day book for ${make} pieces`}</h2>
            <label class="start">
                <span>Started</span>
                <input
                    type="datetime-local"
                    value={written}
                    onInput={(event) => begin((event.currentTarget as HTMLInputElement).value)}
                />
            </label>
            <p class="ready" role="status">
                Ready <strong>{start === undefined ? `after ${showTime(run.ready)}` : showWhen(run.ready, start)}</strong>
                {run.workday === undefined ? '' : `, working ${showTime(run.workday)} a day`}
            </p>
            <p class="quiet">
                {showTime(run.attended)} at the bench and the laser, {showTime(run.idle)} of waiting.
                {run.scaled && ' Only the first pieces are laid out; the rest follows at the same pace.'}
            </p>
            <ol class="sittings">
                {run.sittings.map((sitting) => (
                    <Sitting key={sitting.start} run={run} sitting={sitting} make={make} start={start} choose={choose} />
                ))}
            </ol>
            {run.notBefore.length > 0 && (
                <>
                    <h3>Not before</h3>
                    <ul class="not-before">
                        {run.notBefore.map(({ what, from, why }) => (
                            <li key={what}>
                                {what}: <strong>{from === undefined ? 'not yet' : showWhen(from, start)}</strong>{' '}
                                <span class="quiet">({why})</span>
                            </li>
                        ))}
                    </ul>
                </>
            )}
        </section>
    );
}

interface SittingProps {
    readonly run: RunView;
    readonly sitting: RunView['sittings'][number];
    readonly make: number;
    readonly start: number | undefined;
    readonly choose: (step: number) => void;
}

function Sitting({ run, sitting, make, start, choose }: SittingProps) {
    const longest = Math.max(...run.sittings.map((each) => each.end - each.start));
    const length = sitting.end - sitting.start;
    return (
        <li>
            <div class="when">
                <span>{showWhen(sitting.start, start)}</span>
                <span class="quiet">{showTime(length)}</span>
            </div>
            <Bar sitting={sitting} share={length / longest} />
            <ul class="jobs">
                {sitting.jobs.map((job) => (
                    <li key={`${job.step} ${job.start}`}>
                        <button type="button" onClick={() => choose(job.step)}>
                            {job.title}
                        </button>
                        <span class="quiet">
                            {make > 1 ? ` × ${job.pieces}` : ''}, {showTime(job.length)}
                            {job.machine > 0 ? `, laser ${showTime(job.machine)}` : ''}
                        </span>
                    </li>
                ))}
            </ul>
            {sitting.meanwhile.length > 0 && <p class="aside">Meanwhile: {sitting.meanwhile.join('; ')}.</p>}
            {sitting.pause !== undefined && (
                <p class="pause">
                    <span aria-hidden="true">⋮ </span>
                    {showTime(sitting.pause)} with nothing to do{sitting.until.length > 0 ? `: ${sitting.until.join('; ')}` : ''}
                </p>
            )}
        </li>
    );
}

/** How long the sitting is against the longest, and when in it the laser runs. In words it stands beside it. */
function Bar({ sitting, share }: { sitting: RunView['sittings'][number]; share: number }) {
    const length = sitting.end - sitting.start;
    return (
        <div class="bar" aria-hidden="true" style={{ width: `${Math.max(1.5, share * 100)}%` }}>
            {sitting.jobs.map((job) => (
                <span
                    key={job.start}
                    class={job.machine > 0 ? 'beam' : 'hands'}
                    style={{ width: `${(job.length / length) * 100}%` }}
                />
            ))}
        </div>
    );
}

/** What the clock on the wall shows, as it is written in the field. */
function now(): string {
    const date = new Date();
    return isoMoment(date.getTime() / 1000 - date.getTimezoneOffset() * 60);
}
