import { showArea, showLength, showTime } from '../quantity/show';
import type { Severity } from '../recipe/finding';
import type { Change } from './change';
import type { Amount } from './figure';
import { oneLine } from './one-line';
import type { ArtReview, FindingReview, Review, StepReview, ThingReview } from './review';
import { directions } from './shifts';

/** What a change of a recipe comes to, in one sentence. */
export interface Consequence {
    /** A gained finding's severity; `change` where no rule speaks. */
    readonly kind: Severity | 'change';
    /** Higher is worse; only for the order. */
    readonly weight: number;
    /** Index into the review's steps; absent for the recipe as a whole. */
    readonly step?: number;
    /** Names stand between back quotes. */
    readonly text: string;
    readonly rule?: string;
    /** It was worked out and may have its cause in the stock. */
    readonly worked?: true;
    /** What was written in the same step and led to it, such as "speed: 250 mm/s → 25 mm/s". */
    readonly cause?: string;
}

/** How much worse one kind of consequence is than another: what fails first, then what the piece loses, then what is merely otherwise. */
export const weights = {
    error: 100,
    warning: 70,
    artLost: 60,
    fit: 58,
    gone: 56,
    wait: 54,
    shift: 52,
    proud: 51,
    sheet: 50,
    allowed: 48,
    guess: 46,
    artGained: 44,
    moved: 42,
    depth: 40,
    make: 38,
    info: 36,
    coat: 30,
    price: 26,
    hint: 24,
    added: 20,
    setting: 10,
    other: 4,
};

/** All that follows from the change of a recipe, worst first. What merely got better is left out: it stands in the review itself. */
export function consequencesOf(review: Review): Consequence[] {
    const found = [
        ...review.findings.flatMap((finding) => ofFinding(finding, review)),
        ...review.art.flatMap(ofArt),
        ...review.steps.flatMap((step, index) => ofStep(step, index)),
        ...review.things.flatMap(ofThing),
        ...ofRecipe(review),
    ];
    return found.toSorted((a, b) => b.weight - a.weight);
}

const order: readonly Severity[] = ['hint', 'info', 'warning', 'error'];

/** Whether a finding is new, or says something worse than before. */
export function isGained({ change, severity, before }: FindingReview): boolean {
    return change === 'gained' || (before !== undefined && order.indexOf(severity) > order.indexOf(before.severity));
}

function ofFinding(finding: FindingReview, { steps }: Review): Consequence[] {
    if (!isGained(finding)) return [];
    const { severity, message, rule, step } = finding;
    const cause = step === undefined ? undefined : steps[step]?.settings[0];
    return [
        {
            kind: severity,
            weight: weights[severity],
            text: message,
            worked: true,
            rule,
            ...(step !== undefined && { step }),
            ...(cause !== undefined && steps[step!]?.status === 'changed' && { cause: wrote(cause) }),
        },
    ];
}

function wrote({ label, before, after }: Change): string {
    return oneLine(`${label}: ${before ?? 'nothing'} → ${after ?? 'nothing'}`, 80);
}

function change(weight: keyof typeof weights, text: string, step?: number): Consequence {
    return { kind: 'change', weight: weights[weight], text: oneLine(text), ...(step !== undefined && { step }) };
}

function ofArt({ name, status, gained, lost, kept, parts, changes }: ArtReview): Consequence[] {
    if (status === 'removed') return [change('artLost', `the art ${name} is gone`)];
    if (status === 'added') return [change('added', `there is new art: ${name}`)];
    const share = (part: number): string =>
        kept + lost > 0 ? ` (${Math.max(1, Math.round((100 * part) / (kept + lost)))} %)` : '';
    const named = (list: readonly string[] = [], verb: string): string =>
        list.length === 0 ? '' : `, ${list.slice(0, 3).join(', ')} ${verb}`;
    const state = changes.find(({ label, after }) => label === 'state' && after !== undefined);
    return [
        ...(state === undefined ? [] : [change('artLost', `the art ${name} is ${state.after}`)]),
        ...(lost < leastArt
            ? []
            : [change('artLost', `${showArea(lost)}${share(lost)} of ${name} no longer burns${named(parts?.lost, 'is gone')}`)]),
        ...(gained < leastArt
            ? []
            : [
                  change(
                      'artGained',
                      `${showArea(gained)}${share(gained)} of ${name} burns that did not${named(parts?.gained, 'is new')}`,
                  ),
              ]),
    ];
}

/** Less drawing than this is not missed by anybody, mm2. */
const leastArt = 0.5;

function ofStep(step: StepReview, index: number): Consequence[] {
    const { status, title, moved, shifts = [], settings, follows } = step;
    if (status === 'removed') return [change('gone', 'this step is gone', index)];
    if (status === 'added') return [change('added', 'this step is new', index)];
    const shortened = settings.find(({ label }) => label === 'time');
    return [
        ...(moved ? [change('moved', `comes at place ${step.after! + 1} instead of ${step.before! + 1}`, index)] : []),
        ...(step.titleBefore === undefined || title.startsWith('Wait')
            ? []
            : [change('coat', `was: ${step.titleBefore}`, index)]),
        ...shifts.map((shift) => {
            const way = directions(shift).map(({ by, where }) => `${showLength(by)} ${where}`);
            return change('shift', `${shift.what} lies ${way.join(' and ')} on ${shift.blank}`, index);
        }),
        ...(title.startsWith('Wait') && shortened !== undefined ? ofWait(shortened, settings, index) : []),
        ...follows.flatMap((each) => ofOutcome(each, index)),
        ...settings
            .filter(({ label }) => label !== 'time' || !title.startsWith('Wait'))
            .map((each) => change('setting', wrote(each), index)),
    ];
}

function ofWait({ before, after, amounts }: Change, settings: readonly Change[], step: number): Consequence[] {
    const [was, is] = [amounts?.before?.value, amounts?.after?.value];
    if (was === undefined || is === undefined) return [];
    const reason = settings.some(({ label }) => label === 'reason') ? ', and for another reason' : '';
    return [
        change(is < 0.9 * was ? 'wait' : 'setting', `${is < was ? 'only ' : ''}${after} instead of ${before}${reason}`, step),
    ];
}

/** What is told of an outcome, by its label: how much worse it has to get, as a part of what it was or in mm. */
const outcomes: Readonly<Record<string, (was: number | undefined, is: number | undefined) => keyof typeof weights | undefined>> =
    {
        'not worked out': (_was, is) => (is === undefined ? 'other' : undefined),
        'stands proud': (was = 0, is = 0) => (is > 0.3 && is > was + 0.1 ? 'proud' : undefined),
        'veneer left at worst': (was, is) => (is !== undefined && was !== undefined && is < 0.5 * was ? 'fit' : undefined),
        'floor left': (was, is) => (is !== undefined && was !== undefined && is < 0.7 * was ? 'depth' : undefined),
        'thinnest wall': (was, is) => (is !== undefined && was !== undefined && is < 0.7 * was ? 'depth' : undefined),
        depth: (was, is) =>
            is !== undefined && was !== undefined && Math.abs(is - was) > Math.max(0.05, 0.1 * was) ? 'depth' : undefined,
        tone: (was, is) => (is !== undefined && was !== undefined && Math.abs(is - was) > 0.1 ? 'depth' : undefined),
        'cut free': (was = 0, is = 0) => (is === was ? undefined : 'depth'),
    };

/** An estimate that lies in a range half as wide again as before. */
function isLessSure(was: Amount | undefined, is: Amount | undefined): boolean {
    if (was?.low === undefined || was.high === undefined || is?.low === undefined || is.high === undefined) return false;
    return is.high - is.low > Math.max(0.05, 1.5 * (was.high - was.low));
}

/** Words that stand for something bad when they are new. */
const badWords: Readonly<Record<string, readonly [RegExp, keyof typeof weights]>> = {
    'not worked out': [/./, 'fit'],
    fit: [/^jams/, 'fit'],
    'depth asked for': [/./, 'fit'],
    'settings from': [/^a guess/, 'guess'],
};

function ofOutcome({ label, before, after, amounts }: Change, step: number): Consequence[] {
    const words = badWords[label];
    if (words !== undefined) {
        if (after === undefined || !words[0].test(after)) return [];
        return [{ ...change(words[1], `${label === 'fit' ? '' : `${label}: `}${after}`, step), worked: true }];
    }
    const [was, is] = [amounts?.before, amounts?.after];
    const isKnown = Object.hasOwn(outcomes, label) && (was ?? is) !== undefined;
    const worse = isKnown ? outcomes[label]!(was?.value, is?.value) : undefined;
    const weight = worse ?? (isKnown && isLessSure(was, is) ? 'depth' : undefined);
    if (weight === undefined) return [];
    return [{ ...change(weight, `${label} ${after ?? 'nothing'} instead of ${before ?? 'nothing'}`, step), worked: true }];
}

function ofThing({ thing, status, changes }: ThingReview): Consequence[] {
    if (!thing.startsWith('blank ')) return changes.slice(0, 1).map((each) => change('other', `${thing}, ${wrote(each)}`));
    if (status !== 'changed')
        return [change(status === 'removed' ? 'gone' : 'added', `${thing} is ${status === 'removed' ? 'gone' : 'new'}`)];
    const [sheet, thickness] = ['sheet', 'thickness'].map((wanted) => changes.find(({ label }) => label === wanted));
    return changes.flatMap((each) => {
        if (each === thickness && sheet !== undefined) return [];
        const also = each === sheet && thickness !== undefined ? `, ${wrote(thickness)}` : '';
        return [change(each === sheet ? 'sheet' : 'coat', `${thing}, ${wrote(each)}${also}`)];
    });
}

function ofRecipe({ recipe, cost, allows, run }: Review): Consequence[] {
    const price = cost.find(({ label }) => label === 'price of one');
    const ready = run.find(({ label }) => label === 'ready after');
    const attended = run.find(({ label }) => label === 'attended');
    const hands = attended === undefined ? '' : `, ${shown(attended)} of somebody's time`;
    return [
        ...recipe.map((each) =>
            each.label === 'make'
                ? change('make', `${wrote(each)}${hands}`)
                : change(each.label === 'laser' ? 'sheet' : 'other', wrote(each)),
        ),
        ...allows.flatMap(({ status, rule, reason, step }) =>
            status === 'added'
                ? [
                      change(
                          'allowed',
                          `allowed now: \`${rule}\`${step === undefined ? '' : ` in ${step}`}: ${reason === '' ? 'no reason given' : reason}`,
                      ),
                  ]
                : [],
        ),
        ...(price !== undefined && isFurther(price, 0.1)
            ? [change('price', `price of one ${price.after} instead of ${price.before}`)]
            : []),
        ...(ready !== undefined && isFurther(ready, 0.25) ? [change('price', `ready after ${shown(ready)}`)] : []),
    ];
}

function shown({ before, after, amounts }: Change): string {
    const [was, is] = [amounts?.before?.value, amounts?.after?.value];
    return `${is === undefined ? after : showTime(is)} instead of ${was === undefined ? before : showTime(was)}`;
}

/** Whether a figure differs by more than this part of what it was. */
function isFurther({ amounts }: Change, part: number): boolean {
    const [was, is] = [amounts?.before?.value, amounts?.after?.value];
    return was !== undefined && is !== undefined && Math.abs(is - was) > part * Math.abs(was);
}
