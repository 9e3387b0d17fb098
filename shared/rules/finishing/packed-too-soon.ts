import type { Plan } from '../../plan/plan';
import { showTime } from '../../quantity/show';
import { phrase } from '../../recipe/phrase';
import type { Do, Finish } from '../../recipe/step';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { calledInShop } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

/** A finish has dried for so long before anything lies on it, s. Seen in a finisher's sheet on packing and stacking. */
export const beforePaper = 48 * 3600;

const page: Page = {
    id: 'packed-too-soon',
    title: 'Packed before it has cured',
    severities: ['warning', 'info', 'hint'],
    quickFix: 'always',
    condition:
        'A `do` step packs, wraps, ships or hands the piece over before its finish has cured (`cure` in the stock). From two days on, a step that speaks of plain paper, tissue or foam is left alone.',
    why: 'A finish is dry long before it is hard. Under a wrapping it takes its print, sticks to it or turns dull, and oil that gets no air under film stays soft; in a warm van that goes faster.',
    mend: 'Wait out the cure. Where it has to go sooner: two days at least, longer in damp weather, in plain paper or closed foam, standing on edge; no plastic film, no newspaper, no corrugated board on the finish.',
    source: `A finisher’s sheet on packing and stacking (seen): 48 h at least, and about 30 days until most finishes have cured. The stock’s cure, which is shorter, is ${commonPractice.toLowerCase()} The maker’s data sheet comes first.`,
};

const packs =
    /(?:^|,\s*|\b(?:and|then)\s+)(?:wrap|pack|parcel|ship|box (?:it|them|up)|crate|post (?:it|them)|send (?:it|them)|deliver|hand (?:it |them )?over)\b(?!['’])/i;
const somethingElse = /\b(?:powder|dust|brass|bronze|filler|putty|into the|block|tape|string|cord|offcuts?|tools?|clamps?)\b/i;
const breathes = /\b(?:paper|tissue|foam|felt|blanket)s?\b/i;
const prints = /\b(?:newspaper|corrugated|film|plastic|bubble|cling|stretch)\b/i;

export const packedTooSoon: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step } of plan.steps) {
            if (step.kind !== 'do' || !packs.test(step.text) || somethingElse.test(step.text)) continue;
            const soft = softest(plan, step);
            if (soft === undefined) continue;
            const { finish, cure, gone } = soft;
            const early = !longEnough(gone, Math.min(cure, beforePaper));
            if (!early && breathes.test(step.text) && !prints.test(step.text)) continue;
            const name = calledInShop(finish.coat!);
            yield finding(page, {
                severity: early ? 'warning' : 'info',
                message: phrase`${name} has had ${showTime(gone)} when ${finish.blank.value} is packed; it cures for ${showTime(cure)}${early ? tooEarly(cure) : phrase`: until then plain paper or foam on it, and no film`}.`,
                where: step.where,
                step: step.index,
                rests: [finish.coat?.cure?.where],
                related: [{ message: phrase`Its last coat goes on here.`, where: finish.where }],
                fixes: longerWait(page.id, plan, finish, step, cure - gone, figures),
            });
        }
    },
};

function tooEarly(cure: number): string {
    return cure <= beforePaper ? '' : phrase`, and takes nothing on it before ${showTime(beforePaper)}`;
}

interface Soft {
    readonly finish: Finish;
    /** s. */
    readonly cure: number;
    /** s since its last coat. */
    readonly gone: number;
}

/** The coat that has longest to go when a step is done; undefined where all have cured. */
function softest(plan: Plan, packed: Do): Soft | undefined {
    let worst: Soft | undefined;
    for (const { step } of plan.steps) {
        const cure = step.kind === 'finish' ? step.coat?.cure : undefined;
        if (step.kind !== 'finish' || cure === undefined || step.index > packed.index || isForFood(plan, step)) continue;
        const least = cure.value - cure.tolerance;
        const gone = elapsed(plan, step.index, packed.index);
        if (longEnough(gone, least)) continue;
        if (worst === undefined || least - gone >= worst.cure - worst.gone) worst = { finish: step, cure: least, gone };
    }
    return worst;
}

/** Of what food touches another rule speaks. */
function isForFood({ blanks }: Plan, { blank }: Finish): boolean {
    return blanks.find(({ name }) => name === blank.value)?.blank.touchedBy?.value === 'food';
}
