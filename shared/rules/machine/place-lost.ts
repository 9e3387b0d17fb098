import type { LaserPlan } from '../../plan/laser-plan';
import { lieAlike, lieOf } from '../../plan/lies';
import { zeroOf, zeroWords } from '../../plan/origin';
import type { Plan } from '../../plan/plan';
import { type SetUp, setUps } from '../../plan/set-ups';
import { showLength } from '../../quantity/show';
import type { Finding } from '../../recipe/finding';
import { type Message, phrase } from '../../recipe/phrase';
import type { Zero } from '../../recipe/stock';
import { faceBefore, nameOf } from '../helpers/face-at';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** What a second face may be off against the first where a cut runs round both, mm. @commonPractice */
const meets = 0.2;

const page: Page = {
    id: 'place-lost',
    title: 'Nothing to find its place by',
    severities: ['info', 'warning'],
    quickFix: 'always',
    condition:
        'A blank is laid under the laser again and neither `found by` nor the words of a `do` say how it finds its place (a fence or stop, pins, marks, a jig or frame): it was flipped, and a cut on the one face has to meet work on the other; or its part is out of the sheet.',
    why: 'X 0 Y 0 is a corner of the blank. Turned over, another of its corners lies there: what the blank is wider or narrower than is written shifts the second face against the first by as much. Of a part that was cut out the corner is gone.',
    mend: 'Lay the edge that lay there before against a stop, use pins through the waste, cut the blank to size, or take the origin from its middle (`zero middle`); a part goes back into the frame that it was cut from. Say it by `found by` in a `do` or `flip`.',
    source: `${commonPractice} The shift is plain geometry.`,
};

export const placeLost: Rule = {
    page,
    *examine(plan) {
        const all = setUps(plan);
        for (const setUp of all) {
            const before = all.find(({ number }) => number === setUp.before);
            const [laser] = setUp.lasers;
            if (before === undefined || laser === undefined || setUp.foundBy !== undefined) continue;
            const { step } = laser;
            const { name } = setUp.blank;
            const isFree = faceBefore(plan, step.index, name)?.freed === true;
            const lost = isFree ? outOfSheet(plan, laser) : turned(plan, before, setUp);
            if (lost === undefined) continue;
            yield finding(page, {
                severity: lost.severity,
                message: lost.words,
                where: step.where,
                step: step.index,
                related: lost.related,
                fixes: [
                    {
                        title: phrase`Add a step that says how it is laid down`,
                        preferred: true,
                        changes: [statementBefore(step, lost.mend(name))],
                    },
                ],
            });
        }
    },
};

interface Lost {
    readonly severity: 'info' | 'warning';
    readonly words: Message;
    readonly related: NonNullable<Finding['related']>;
    readonly mend: (blank: string) => string;
}

/** A cut with tabs or on a backing has let the part go: without either, cut-too-early speaks. */
function outOfSheet(plan: Plan, { step, blank }: LaserPlan): Lost | undefined {
    const cut = plan.steps.findLast(
        (other) => other.laser?.step.kind === 'cut' && other.blank === blank && other.step.index < step.index,
    )?.step;
    const isBacked = plan.blanks.find(({ name }) => name === blank)?.blank.backing !== 'none';
    if (cut?.kind !== 'cut' || (!isBacked && (cut.tabs?.value ?? 0) === 0)) return undefined;
    return {
        severity: 'warning',
        words: phrase`The part is out of its sheet by then, and with it the corner of ${blank} from which ${nameOf(step)} is measured (X 0 Y 0 is the ${zeroWords(zeroOf(plan.recipe.laser))}). Lay it back into the frame that it was cut from, and say so, or burn ${nameOf(step)} before ${cut.name}.`,
        related: [{ message: phrase`${cut.name} is cut here.`, where: cut.where }],
        mend: (name) =>
            `do "lay the part of ${name} back into the frame that it was cut from" for 3 min { found by frame of ${cut.name} }`,
    };
}

/** Another corner lies at X 0 Y 0, and a cut on one face has to meet the other. */
function turned({ recipe }: Plan, before: SetUp, setUp: SetUp): Lost | undefined {
    const [first, laser] = [before.lasers[0]!, setUp.lasers[0]!];
    const { blank } = setUp;
    if (blank.size === undefined || lieAlike(first, laser) || zeroOf(recipe.laser) === 'middle') return undefined;
    if (![...before.lasers, ...setUp.lasers].some(({ step, through }) => step.kind === 'cut' || through)) return undefined;
    const across = lieOf(first).across !== lieOf(laser).across;
    const size = across ? blank.blank.size!.width : blank.blank.size!.height;
    const places = across ? phrase`left and right` : phrase`the far and the near side`;
    const way = across ? phrase`width` : phrase`height`;
    const [was, now] = edgesOf(zeroOf(recipe.laser), across);
    const length = showLength(size.value, size.unit);
    return {
        severity: 'info',
        words: phrase`${blank.name} is laid down again with another corner at X 0 Y 0, since ${places} have changed places: what ${blank.name} is off from ${length} in ${way}, ${nameOf(laser.step)} is off against ${nameOf(first.step)}. Lay what is its ${now} edge now, and was its ${was} one, against a stop, or cut the blank to within ${showLength(meets)}, and say so.`,
        related: [{ message: phrase`${nameOf(first.step)} is burnt here.`, where: first.step.where }],
        mend: (name) =>
            `do "push ${name} against a stop at its ${now} edge, which was its ${was} one" for 2 min { found by fence }`,
    };
}

/** The edge from which places were measured, as it lay before and as it lies now. */
function edgesOf(zero: Zero, across: boolean): readonly [was: string, now: string] {
    if (across) return zero.endsWith('left') ? ['left', 'right'] : ['right', 'left'];
    return zero.startsWith('lower') ? ['near', 'far'] : ['far', 'near'];
}
