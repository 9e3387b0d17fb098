import type { BenchView } from '../../../shared/view/bench-view';
import { goToSection } from './go-to';

/** A line that stays in sight and leads to every part of the page. */
export function Contents({ view }: { view: BenchView }) {
    return (
        <nav class="contents" aria-label="On this page">
            {partsOf(view).map(([heading, name]) => (
                <button key={heading} type="button" onClick={() => goToSection(heading)}>
                    {name}
                </button>
            ))}
        </nav>
    );
}

/** Ids of headings, and what they are called here. */
function partsOf({ findings, inlays, steps, cautions, run, supplies }: BenchView): readonly (readonly [string, string])[] {
    const parts: readonly (readonly [string, string, boolean])[] = [
        ['findings-heading', `Findings (${findings.length})`, findings.length > 0],
        ['piece-panel', 'Picture', true],
        [`inlay-${inlays[0]?.step}-heading`, 'Halves', inlays.length > 0],
        ['steps-heading', 'Steps', steps.length > 0],
        ['cautions-heading', 'Before you start', cautions.length > 0],
        ['day-book-heading', 'Day book', run.sittings.length > 0],
        ['sheets-heading', 'Sheets', run.sheets.length > 0],
        ['supplies-heading', 'Supplies', supplies.length > 0],
        ['cost-heading', 'Cost', run.cost !== undefined],
    ];
    return parts.filter(([, , isThere]) => isThere).map(([heading, name]) => [heading, name]);
}
