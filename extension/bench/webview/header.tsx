import { showTime } from '../../../shared/quantity/show';
import type { BenchView } from '../../../shared/view/bench-view';
import { editor } from './editor-link';

/** Which recipe this is, and how long it takes. */
export function Header({ view }: { view: BenchView }) {
    const { totals, unknown } = view;
    return (
        <header>
            <div>
                <h1>{view.title}</h1>
                <p class="quiet">
                    issue {view.revision} · makes {view.make}
                </p>
            </div>
            {view.recipes.length > 1 && <RecipeChoice view={view} />}
            <div class="in-all">
                {view.make > 1 && <span class="quiet">for one piece</span>}
                {totals === undefined && <span class="quiet">Times are unknown: {unknown}</span>}
                {totals !== undefined && (
                    <dl class="totals" aria-label="Times in all">
                        <Total name="Laser" seconds={totals.machine} />
                        <Total name="Hands on" seconds={totals.attended} />
                        <Total name="Waiting" seconds={totals.waiting} />
                    </dl>
                )}
            </div>
        </header>
    );
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
