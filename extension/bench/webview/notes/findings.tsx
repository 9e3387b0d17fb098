import type { BenchView } from '../../../../shared/view/bench-view';
import { editor, reveal } from '../editor-link';
import { findingKeys } from './finding-keys';

const marks = { error: '✕', warning: '!', info: 'i', hint: '·' } as const;
const names = { error: 'Error', warning: 'Warning', info: 'Note', hint: 'Hint' } as const;

/** Words of the language stand between backticks. */
function Message({ text }: { text: string }) {
    return (
        <>
            {text.split('`').map((part, index) => (
                <span key={index} class={index % 2 === 1 ? 'word' : undefined}>
                    {part}
                </span>
            ))}
        </>
    );
}

/** What a maker should know; the numbers are those of the rings on the picture. */
export function Findings({ view, choose }: { view: BenchView; choose: (step: number) => void }) {
    if (view.findings.length === 0) {
        return (
            <section aria-labelledby="findings-heading">
                <h2 id="findings-heading">Findings</h2>
                <p class="quiet">Nothing to mend.</p>
            </section>
        );
    }
    const keys = findingKeys(view.findings);
    return (
        <section aria-labelledby="findings-heading">
            <h2 id="findings-heading">Findings ({view.findings.length})</h2>
            <ol class="findings">
                {view.findings.map((finding, index) => {
                    const { rule, severity, message, step, where, spots } = finding;
                    return (
                        <li key={keys[index]} class={severity}>
                            <span class="mark" aria-hidden="true">
                                {marks[severity]}
                            </span>
                            <button
                                type="button"
                                class="finding"
                                onClick={(event) => {
                                    if (step !== undefined) choose(step);
                                    reveal(where, event);
                                }}
                            >
                                <span class="hidden">{names[severity]}: </span>
                                <Message text={message} />
                                {spots.length > 0 && <span class="ring-number"> Ring {index + 1} on the picture.</span>}
                            </button>
                            <button
                                type="button"
                                class="why"
                                aria-label={`Explain ${rule}`}
                                onClick={() => editor.postMessage({ type: 'explain', rule })}
                            >
                                Explain
                            </button>
                        </li>
                    );
                })}
            </ol>
        </section>
    );
}
