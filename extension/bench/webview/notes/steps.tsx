import { showTime } from '../../../../shared/quantity/show';
import type { BenchView, StepView } from '../../../../shared/view/bench-view';
import { reveal } from '../editor-link';
import { WrittenNumber } from './written-number';

interface StepsProps {
    readonly view: BenchView;
    readonly chosen: number | undefined;
    readonly lit: number | undefined;
    readonly choose: (step: number) => void;
}

/** The steps with their facts and times. A step or fact leads to its place in the text. */
export function Steps({ view, chosen, lit, choose }: StepsProps) {
    return (
        <section aria-labelledby="steps-heading">
            <h2 id="steps-heading">Steps</h2>
            <ol class="steps">
                {view.steps.map((step) => (
                    <li
                        key={`${step.index} ${step.title}`}
                        class={`${step.index === chosen ? 'chosen' : ''} ${step.index === lit ? 'lit' : ''}`}
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
                            <span class="step-title">{step.title}</span>
                            <span class="times">{timesOf(step)}</span>
                        </button>
                        {step.unplanned !== undefined && <p class="unplanned">Not planned: {step.unplanned}</p>}
                        {step.facts.length > 0 && <Facts step={step} textVersion={view.textVersion} />}
                    </li>
                ))}
            </ol>
        </section>
    );
}

function Facts({ step, textVersion }: { step: StepView; textVersion: number }) {
    return (
        <ul class="facts">
            {step.facts.map(({ label, value, where, written }) => (
                <li key={label === 'caution' ? value : label} class={label === 'caution' ? 'of-caution' : undefined}>
                    {where === undefined ? (
                        <span class="fact">
                            <span class="label">{label}</span> <span class="value">{value}</span>
                        </span>
                    ) : (
                        <button type="button" class="fact link" onClick={(event) => reveal(where, event)}>
                            <span class="label">{label}</span> <span class="value">{value}</span>
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

function timesOf({ machine, attended, waiting }: StepView): string {
    const parts = [
        machine > 0 ? `${showTime(machine)} laser` : '',
        attended > 0 ? `${showTime(attended)} hands on` : '',
        waiting > 0 ? `${showTime(waiting)} wait` : '',
    ];
    return parts.filter((part) => part !== '').join(' · ');
}
