import { showTime } from '../../../shared/quantity/show';
import type { BenchView, FindingView } from '../../../shared/view/bench-view';
import type { BenchCommand } from '../messages';
import { editor } from './editor-link';
import { goToSection } from './go-to';
import { marks } from './notes/findings';
import { countBySeverity } from './notes/group-findings';
import { pageBody } from './page-body';
import type { RunState } from './run';

const many: Readonly<Record<FindingView['severity'], readonly [string, string]>> = {
    error: ['error', 'errors'],
    warning: ['warning', 'warnings'],
    info: ['note', 'notes'],
    hint: ['hint', 'hints'],
};

/** Which recipe this is, what is wrong with it, how long it takes and what it costs. */
export function Header({ view, run }: { view: BenchView; run: RunState }) {
    const { totals, unknown, make } = view;
    return (
        <header>
            <div>
                <h1>{view.title}</h1>
                <p class="quiet">
                    issue {view.revision} · makes {make}{' '}
                    <button
                        type="button"
                        class="more for-hand"
                        onClick={() => savePage(view)}
                        title="As a page that a browser prints, with what is open now"
                    >
                        Save this page …
                    </button>
                </p>
            </div>
            {view.recipes.length > 1 && <RecipeChoice view={view} />}
            <Chips view={view} />
            <div class="in-all">
                {totals === undefined && <span class="quiet">Times are unknown: {unknown}</span>}
                {totals !== undefined && (
                    <dl class="totals" aria-label={make > 1 ? 'Times in all, for one piece' : 'Times in all'}>
                        <Total name="Laser" seconds={totals.machine} />
                        <Total name="Hands on" seconds={totals.attended} />
                        <Total name="Waiting" seconds={totals.waiting} />
                    </dl>
                )}
                {totals !== undefined && make > 1 && <span class="quiet">for one piece</span>}
                <Cost view={view} />
            </div>
            <Next run={run} view={view} />
        </header>
    );
}

/** What is found, by severity: each chip leads there. */
function Chips({ view: { findings } }: { view: BenchView }) {
    if (findings.length === 0) return <p class="chips quiet">Nothing to mend.</p>;
    return (
        <div class="chips">
            {countBySeverity(findings).map(([severity, count]) => (
                <button key={severity} type="button" class={`chip ${severity}`} onClick={() => goToSection('findings-heading')}>
                    <span class="mark" aria-hidden="true">
                        {marks[severity]}
                    </span>
                    {count} {many[severity][count === 1 ? 0 : 1]}
                </button>
            ))}
        </div>
    );
}

/** The sums of the cost table, which stands below. */
function Cost({ view: { run } }: { view: BenchView }) {
    const sums = (run.cost?.lines ?? []).filter(({ sum }) => sum === true);
    if (sums.length === 0) return null;
    return (
        <dl class="totals" aria-label="Cost and price">
            {sums.map(({ label, amount }) => (
                <div key={label}>
                    <dt>{label}</dt>
                    <dd>{amount}</dd>
                </div>
            ))}
        </dl>
    );
}

/** How far the run is, once it has begun, and the way to end it. */
function Next({ run, view }: { run: RunState; view: BenchView }) {
    if (run.done.size === 0) return null;
    const now = view.steps.find(({ index }) => index === run.now);
    return (
        <p class="next" role="status">
            {run.isOver ? (
                <>
                    Every step is done.{' '}
                    <button type="button" class="push" onClick={() => order('finish')}>
                        Finish the Run
                    </button>
                </>
            ) : (
                <>
                    {run.done.size} of {view.steps.length} steps done{now === undefined ? '.' : ', next: '}
                    {now !== undefined && <strong>{now.title}</strong>}
                </>
            )}
        </p>
    );
}

/** With all that is open on it. */
function savePage({ recipe }: BenchView): void {
    const root = document.getElementById('bench');
    if (root !== null) editor.postMessage({ type: 'save-page', name: recipe, body: pageBody(root) });
}

function order(name: BenchCommand): void {
    editor.postMessage({ type: 'command', name });
}

function Total({ name, seconds }: { name: string; seconds: number }) {
    return (
        <div>
            <dt>{name}</dt>
            <dd>{seconds > 0 ? showTime(seconds) : '–'}</dd>
        </div>
    );
}

function RecipeChoice({ view }: { view: BenchView }) {
    return (
        <label class="recipe-choice">
            <span>Recipe</span>
            <select
                value={view.recipe}
                onChange={(event) =>
                    editor.postMessage({ type: 'recipe', name: (event.currentTarget as HTMLSelectElement).value })
                }
            >
                {view.recipes.map(({ name, title }) => (
                    <option key={name} value={name}>
                        {title || name}
                    </option>
                ))}
            </select>
        </label>
    );
}
