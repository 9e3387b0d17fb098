import type { ComponentChildren } from 'preact';
import type { Where } from '../../quantity/where';
import { oneLine } from '../one-line';
import type { PinnedNote } from '../pinned';
import type { BlockPlaces, ReviewPlaces } from '../places';
import type { AllowReview, FindingReview, Review, Status, StepReview, ThingReview } from '../review';
import { artLine, isQuiet, signOf } from '../wording';
import { ChangeTable } from './change-table';
import { RuleName, ToPlace } from './links';
import { Spoken } from './spoken';
import { TableHead } from './table-head';

/** Everything that differs, in words. */
export function Changes({ review, places }: { review: Review; places?: ReviewPlaces }) {
    const { guesses, pinned, cautions } = review;
    const findings = review.findings.map((finding, index): PlacedFinding => ({ finding, where: places?.findings[index] }));
    const whole = findings.filter(({ finding }) => finding.step === undefined);
    return (
        <>
            <ChangeTable changes={review.recipe} />
            {review.things.map((thing) => (
                <Thing key={thing.thing} of={thing} places={places?.things[thing.thing]} />
            ))}
            {review.steps.map((step, index) => (
                <Step
                    key={String(index)}
                    step={step}
                    places={places?.steps[index]}
                    findings={findings.filter(({ finding }) => finding.step === index)}
                />
            ))}
            {review.art.map((art) => (
                <section key={art.name}>
                    <Heading status={art.status} title={`art ${art.name}`} where={placeOf(places?.art, art.name)} />
                    <p>{artLine(art)}</p>
                    <ChangeTable changes={art.changes} />
                </section>
            ))}
            <Part title="For one piece" shown={review.times.length > 0}>
                <ChangeTable changes={review.times} />
            </Part>
            <Part title="For all the pieces" shown={review.run.length > 0}>
                <ChangeTable changes={review.run} />
            </Part>
            <Part title="To have on the bench" shown={review.supplies.length > 0}>
                <ChangeTable changes={review.supplies} />
            </Part>
            <Part title="What it costs" shown={review.cost.length > 0}>
                <ChangeTable changes={review.cost} />
            </Part>
            {review.runs.map((run) => (
                <Thing key={run.thing} of={run} places={places?.things[run.thing]} />
            ))}
            <Part title="Findings of the recipe as a whole" shown={whole.length > 0}>
                <Findings findings={whole} />
            </Part>
            <Part title="Allowed" shown={review.allows.length > 0}>
                <ul>
                    {review.allows.map((allow, index) => (
                        <Allow key={String(index)} allow={allow} where={places?.allows[index]} />
                    ))}
                </ul>
            </Part>
            <Part
                title={`Settings without a coupon: ${guesses.before.length} → ${guesses.after.length}`}
                shown={guesses.before.length + guesses.after.length > 0}
            >
                <List items={guesses.after} />
            </Part>
            <Part title={`Pinned settings: ${pinned.before.length} → ${pinned.after.length}`} shown={pinned.after.length > 0}>
                <Pinned notes={pinned.after} />
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

interface PlacedFinding {
    readonly finding: FindingReview;
    readonly where: Where | undefined;
}

function Thing({ of: { thing, status, changes }, places }: { of: ThingReview; places: BlockPlaces | undefined }) {
    return (
        <section>
            <Heading status={status} title={thing} where={places?.at} />
            <ChangeTable changes={changes} {...(places !== undefined && { lines: places.lines })} />
        </section>
    );
}

function Heading({ status, title, where }: { status: Status; title: string; where: Where | undefined }) {
    return (
        <h3>
            <span class="sign">{signOf(status)} </span>
            <ToPlace where={where}>{oneLine(title)}</ToPlace>
        </h3>
    );
}

interface StepProps {
    readonly step: StepReview;
    readonly places: BlockPlaces | undefined;
    readonly findings: readonly PlacedFinding[];
}

function Step({ step, places, findings }: StepProps) {
    if (isQuiet(step) && findings.length === 0) return null;
    return (
        <section>
            <Heading status={step.status} title={step.title} where={places?.at} />
            {step.titleBefore !== undefined && <p class="note">before: {oneLine(step.titleBefore)}</p>}
            {step.moved && (
                <p class="note">
                    moved from place {step.before! + 1} to {step.after! + 1}
                </p>
            )}
            <ChangeTable changes={step.settings} follows={step.follows} {...(places !== undefined && { lines: places.lines })} />
            <Findings findings={findings} />
        </section>
    );
}

function Findings({ findings }: { findings: readonly PlacedFinding[] }) {
    if (findings.length === 0) return null;
    return (
        <ul>
            {findings.map(({ finding: { change, severity, message, rule, before }, where }, index) => (
                <li key={String(index)}>
                    <ToPlace where={where}>
                        <strong>{change}</strong> {severity}
                    </ToPlace>
                    : <Spoken text={message} /> <RuleName id={oneLine(rule)} />
                    {before !== undefined && (
                        <span class="note">
                            {' '}
                            before: {before.severity}: <Spoken text={before.message} />
                        </span>
                    )}
                </li>
            ))}
        </ul>
    );
}

interface AllowProps {
    readonly allow: AllowReview;
    readonly where: Where | undefined;
}

function Allow({ allow: { status, rule, reason, reasonBefore, step }, where }: AllowProps) {
    return (
        <li>
            <span class="sign">{signOf(status)} </span>
            <ToPlace where={where}>
                <code>{oneLine(rule)}</code>
            </ToPlace>
            {step !== undefined && ` in ${oneLine(step)}`}: {reason === '' ? 'no reason given' : oneLine(reason)}
            {reasonBefore !== undefined && <span class="note"> before: {oneLine(reasonBefore)}</span>}
        </li>
    );
}

function Pinned({ notes }: { notes: readonly PinnedNote[] }) {
    return (
        <table class="changes">
            <TableHead columns={['step', 'setting', 'pinned', 'solving would give']} />
            <tbody>
                {notes.map(({ title, setting, written, solved }, index) => (
                    <tr key={String(index)}>
                        <td>{oneLine(title)}</td>
                        <td>{setting}</td>
                        <td>{written}</td>
                        <td>{solved}</td>
                    </tr>
                ))}
            </tbody>
        </table>
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

/** A name may be one that every object knows, such as `constructor`. */
function placeOf(places: ReviewPlaces['art'] | undefined, name: string): Where | undefined {
    return places !== undefined && Object.hasOwn(places, name) ? places[name] : undefined;
}
