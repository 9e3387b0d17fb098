import { useState } from 'preact/hooks';
import type { BenchView } from '../../../../shared/view/bench-view';
import { editor, reveal } from '../editor-link';
import { findingKeys } from './finding-keys';
import { type FindingGroup, groupFindings, type NumberedFinding } from './group-findings';
import { Message } from './message';

export const marks = { error: '✕', warning: '!', info: 'i', hint: '·' } as const;
const names = { error: 'Error', warning: 'Warning', info: 'Note', hint: 'Hint' } as const;

/** So many kinds are shown at first; the picture is not to lie below the fold for the rest. */
const FIRST = 3;

interface FindingsProps {
    readonly view: BenchView;
    readonly choose: (step: number) => void;
}

/** What a maker should know, worst first, those alike together; the numbers are those of the rings on the picture. */
export function Findings({ view, choose }: FindingsProps) {
    const [isOpen, setOpen] = useState(false);
    const { findings } = view;
    if (findings.length === 0) return null;
    const groups = groupFindings(findings);
    const keys = findingKeys(findings);
    const shown = isOpen ? groups : groups.slice(0, FIRST);
    const hidden = groups.slice(shown.length).reduce((sum, { alike }) => sum + 1 + alike.length, 0);
    return (
        <section aria-labelledby="findings-heading" class="found">
            <h2 id="findings-heading" tabIndex={-1}>
                Findings ({findings.length})
            </h2>
            <ol class="findings">
                {shown.map((group) => (
                    <Group key={keys[group.first.index]} group={group} choose={choose} />
                ))}
            </ol>
            {groups.length > FIRST && (
                <button type="button" class="more" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
                    {isOpen ? 'Show fewer' : `Show ${hidden} more`}
                </button>
            )}
        </section>
    );
}

function Group({ group: { first, alike }, choose }: { group: FindingGroup; choose: FindingsProps['choose'] }) {
    const [isOpen, setOpen] = useState(false);
    return (
        <li class={first.severity}>
            <Finding finding={first} choose={choose} />
            {alike.length > 0 && (
                <button type="button" class="alike" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
                    {isOpen ? 'Fold' : `${alike.length} more like it`}
                </button>
            )}
            {isOpen && (
                <ol>
                    {alike.map((finding) => (
                        <li key={finding.index} class={finding.severity}>
                            <Finding finding={finding} choose={choose} />
                        </li>
                    ))}
                </ol>
            )}
        </li>
    );
}

function Finding({ finding, choose }: { finding: NumberedFinding; choose: FindingsProps['choose'] }) {
    const { rule, severity, message, step, where, spots, index, fix, trying = false, follows = [] } = finding;
    return (
        <div class="one">
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
                {follows.map((each) => (
                    <span key={each} class="follows">
                        It follows: <Message text={each} />
                    </span>
                ))}
            </button>
            <span class="ways">
                {fix !== undefined && (
                    <button
                        type="button"
                        class="fix"
                        title={fix}
                        aria-label={`Fix: ${fix}`}
                        onClick={() => editor.postMessage({ type: 'fix', fix, where })}
                    >
                        Fix
                    </button>
                )}
                {trying && (
                    <button type="button" class="fix" title="The fix is being tried out" disabled>
                        Fix
                    </button>
                )}
                <button
                    type="button"
                    class="why"
                    aria-label={`Explain ${rule}`}
                    onClick={() => editor.postMessage({ type: 'explain', rule })}
                >
                    Explain
                </button>
            </span>
        </div>
    );
}
