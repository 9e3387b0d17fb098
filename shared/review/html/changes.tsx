import type { ComponentChildren } from 'preact';
import type { Change } from '../change';
import { oneLine } from '../one-line';
import type { AllowReview, FindingReview, Review, Status, StepReview } from '../review';
import { artLine, isQuiet, signOf } from '../wording';

/** Everything that differs, in words. */
export function Changes({ review }: { review: Review }) {
    const { guesses, cautions } = review;
    const whole = review.findings.filter(({ step }) => step === undefined);
    return (
        <>
            <Table changes={review.recipe} />
            {review.things.map(({ thing, status, changes }) => (
                <section key={thing}>
                    <Heading status={status} title={thing} />
                    <Table changes={changes} />
                </section>
            ))}
            {review.steps.map((step, index) => (
                <Step key={String(index)} step={step} findings={review.findings.filter((finding) => finding.step === index)} />
            ))}
            {review.art.map((art) => (
                <section key={art.name}>
                    <Heading status={art.status} title={`art ${art.name}`} />
                    <p>{artLine(art)}</p>
                    <Table changes={art.changes} />
                </section>
            ))}
            <Part title="For one piece" shown={review.times.length > 0}>
                <Table changes={review.times} />
            </Part>
            <Part title="To have on the bench" shown={review.supplies.length > 0}>
                <Table changes={review.supplies} />
            </Part>
            <Part title="Findings of the recipe as a whole" shown={whole.length > 0}>
                <Findings findings={whole} />
            </Part>
            <Part title="Allowed" shown={review.allows.length > 0}>
                <ul>
                    {review.allows.map((allow, index) => (
                        <Allow key={String(index)} allow={allow} />
                    ))}
                </ul>
            </Part>
            <Part
                title={`Settings without a coupon: ${guesses.before.length} → ${guesses.after.length}`}
                shown={guesses.before.length + guesses.after.length > 0}
            >
                <List items={guesses.after} />
            </Part>
            <Part title="Cautions" shown={cautions.gained.length + cautions.lost.length > 0}>
                <List
                    items={[
                        ...cautions.gained.map((text) => `new: ${text}`),
                        ...cautions.lost.map((text) => `no longer: ${text}`),
                    ]}
                />
            </Part>
        </>
    );
}

function Heading({ status, title }: { status: Status; title: string }) {
    return (
        <h3>
            <span class="sign">{signOf(status)} </span>
            {oneLine(title)}
        </h3>
    );
}

function Step({ step, findings }: { step: StepReview; findings: readonly FindingReview[] }) {
    if (isQuiet(step) && findings.length === 0) return null;
    return (
        <section>
            <Heading status={step.status} title={step.title} />
            {step.titleBefore !== undefined && <p class="note">before: {oneLine(step.titleBefore)}</p>}
            {step.moved && (
                <p class="note">
                    moved from place {step.before! + 1} to {step.after! + 1}
                </p>
            )}
            <Table changes={step.settings} follows={step.follows} />
            <Findings findings={findings} />
        </section>
    );
}

function Table({ changes, follows = [] }: { changes: readonly Change[]; follows?: readonly Change[] }) {
    if (changes.length + follows.length === 0) return null;
    return (
        <table class="changes">
            <thead>
                <tr>
                    <th scope="col">what</th>
                    <th scope="col">before</th>
                    <th scope="col">after</th>
                    <th scope="col">difference</th>
                </tr>
            </thead>
            <tbody>
                {changes.map((change) => (
                    <Row key={change.label} change={change} kind="written" />
                ))}
                {follows.map((change) => (
                    <Row key={change.label} change={change} kind="follows" />
                ))}
            </tbody>
        </table>
    );
}

function Row({ change: { label, before, after, by }, kind }: { change: Change; kind: string }) {
    return (
        <tr class={kind}>
            <td>{oneLine(label)}</td>
            <td>{before === undefined ? null : <del>{oneLine(before)}</del>}</td>
            <td>{after === undefined ? null : <ins>{oneLine(after)}</ins>}</td>
            <td>{by}</td>
        </tr>
    );
}

function Findings({ findings }: { findings: readonly FindingReview[] }) {
    if (findings.length === 0) return null;
    return (
        <ul>
            {findings.map(({ change, severity, message, rule, before }, index) => (
                <li key={String(index)}>
                    <strong>{change}</strong> {severity}: {oneLine(message)} <code>{oneLine(rule)}</code>
                    {before !== undefined && (
                        <span class="note">
                            {' '}
                            before: {before.severity}: {oneLine(before.message)}
                        </span>
                    )}
                </li>
            ))}
        </ul>
    );
}

function Allow({ allow: { status, rule, reason, reasonBefore, step } }: { allow: AllowReview }) {
    return (
        <li>
            <span class="sign">{signOf(status)} </span>
            <code>{oneLine(rule)}</code>
            {step !== undefined && ` in ${oneLine(step)}`}: {reason === '' ? 'no reason given' : oneLine(reason)}
            {reasonBefore !== undefined && <span class="note"> before: {oneLine(reasonBefore)}</span>}
        </li>
    );
}

function List({ items }: { items: readonly string[] }) {
    return (
        <ul>
            {items.map((item, index) => (
                <li key={String(index)}>{oneLine(item)}</li>
            ))}
        </ul>
    );
}

function Part({ title, shown, children }: { title: string; shown: boolean; children: ComponentChildren }) {
    if (!shown) return null;
    return (
        <section>
            <h3>{title}</h3>
            {children}
        </section>
    );
}
