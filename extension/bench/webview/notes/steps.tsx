import { showTime } from '../../../../shared/quantity/show';
import type { BenchView, StepView } from '../../../../shared/view/bench-view';
import { Countdown } from '../countdown';
import { reveal } from '../editor-link';
import type { RunState } from '../run';
import { isMajor, meaningOf } from './fact-labels';
import { Trade } from './trade';
import { WrittenNumber } from './written-number';

interface StepsProps {
    readonly view: BenchView;
    readonly chosen: number | undefined;
    readonly lit: number | undefined;
    readonly run: RunState;
    readonly choose: (step: number) => void;
}

/** The steps with their facts and times. A step or fact leads to its place in the text. */
export function Steps({ view, chosen, lit, run, choose }: StepsProps) {
    return (
        <section aria-labelledby="steps-heading">
            <h2 id="steps-heading">Steps</h2>
            <ol class="steps">
                {view.steps.map((step) => (
                    <li
                        key={`${step.index} ${step.title}`}
                        class={classOf(step, chosen, lit, run)}
                        aria-current={step.index === lit ? 'location' : undefined}
                    >
                        <button
                            type="button"
                            class="step"
                            onClick={(event) => {
                                choose(step.index);
                                reveal(step.where, event);
                            }}
                        >
                            <span class="step-title">
                                {step.title}
                                {run.done.has(step.index) && <span class="hidden">, done</span>}
                                {step.index === run.now && <span class="now-mark">now</span>}
                            </span>
                            <span class="times">
                                {timesOf(step)}
                                {run.ends.has(step.index) && (
                                    <>
                                        {' · '}
                                        <Countdown ends={run.ends.get(step.index)!} />
                                    </>
                                )}
                            </span>
                        </button>
                        {step.unplanned !== undefined && <p class="unplanned">Not planned: {step.unplanned}</p>}
                        <Facts step={step} facts={step.facts.filter(isMajor)} textVersion={view.textVersion} />
                        <MinorFacts step={step} textVersion={view.textVersion} />
                        <Trade step={step} />
                    </li>
                ))}
            </ol>
        </section>
    );
}

function classOf({ index }: StepView, chosen: number | undefined, lit: number | undefined, run: RunState): string {
    const marks = [
        index === chosen ? 'chosen' : '',
        index === lit ? 'lit' : '',
        run.done.has(index) ? 'done' : '',
        index === run.now ? 'now' : '',
    ];
    return marks.filter((mark) => mark !== '').join(' ');
}

/** What one looks up rather than goes by at the bench. */
function MinorFacts({ step, textVersion }: { step: StepView; textVersion: number }) {
    const minor = step.facts.filter((fact) => !isMajor(fact));
    if (minor.length === 0) return null;
    return (
        <details class="minor">
            <summary>{minor.map(({ label }) => label).join(', ')}</summary>
            <Facts step={step} facts={minor} textVersion={textVersion} />
        </details>
    );
}

interface FactsProps {
    readonly step: StepView;
    readonly facts: StepView['facts'];
    readonly textVersion: number;
}

function Facts({ step, facts, textVersion }: FactsProps) {
    if (facts.length === 0) return null;
    return (
        <ul class="facts">
            {facts.map(({ label, value, where, written }) => (
                <li
                    key={label === 'caution' || label === 'mind' ? value : label}
                    class={label === 'caution' ? 'of-caution' : undefined}
                >
                    {where === undefined ? (
                        <span class="fact">
                            <Label label={label} /> <span class="value">{value}</span>
                        </span>
                    ) : (
                        <button type="button" class="fact link" onClick={(event) => reveal(where, event)}>
                            <Label label={label} /> <span class="value">{value}</span>
                        </button>
                    )}
                    {where !== undefined && written !== undefined && (
                        <WrittenNumber
                            name={`${label} of ${step.title}`}
                            written={{ where, text: written }}
                            textVersion={textVersion}
                        />
                    )}
                </li>
            ))}
        </ul>
    );
}

function Label({ label }: { label: string }) {
    const meaning = meaningOf(label);
    return (
        <span class={meaning === undefined ? 'label' : 'label term'} title={meaning}>
            {label}
        </span>
    );
}

function timesOf({ machine, attended, waiting }: StepView): string {
    const parts = [
        machine > 0 ? `${showTime(machine)} laser` : '',
        attended > 0 ? `${showTime(attended)} hands on` : '',
        waiting > 0 ? `${showTime(waiting)} wait` : '',
    ];
    return parts.filter((part) => part !== '').join(' · ');
}
