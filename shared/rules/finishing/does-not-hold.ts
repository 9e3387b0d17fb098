import { area } from '../../geometry/measure';
import type { Face } from '../../piece/face';
import type { Plan } from '../../plan/plan';
import type { Quantity } from '../../quantity/quantity';
import { showTime } from '../../quantity/show';
import type { Fix } from '../../recipe/finding';
import { laidBy } from '../../recipe/laid-by';
import { type Message, phrase } from '../../recipe/phrase';
import type { Step } from '../../recipe/step';
import type { Laying, Named } from '../../recipe/stock';
import { atItsWord } from '../figures';
import { elapsed, longEnough } from '../helpers/elapsed';
import { faceBefore, negligible } from '../helpers/face-at';
import { calledInShop, isPrepared, preparing, type Refusal, refusalOf } from '../helpers/laid-over';
import { longerWait } from '../helpers/longer-wait';
import { statementBefore } from '../helpers/statement-before';
import { commonPractice, type Page } from '../page';
import { finding, type Rule } from '../rule';

const page: Page = {
    id: 'does-not-hold',
    title: 'Coat that does not hold',
    severities: ['warning', 'hint'],
    quickFix: 'sometimes',
    condition:
        'A sealer or finish goes over a coat or a fill on which the stock says that it never holds (`over wax never`), that has had less time than it says (`over drying-oil after 7 d`), that has to be sanded or wiped first (`over epoxy-coat once sanded`), or that is not dry yet.',
    why: 'On wax and mineral oil nothing holds; over oil that has not hardened a film stays soft, wrinkles or peels; off a hard, glossy film the next one chips.',
    mend: 'Wait longer, sand the first coat dull or off, or take a finish that belongs on it. The data sheets of both come first.',
    source: `${commonPractice} The times are the stock’s figures. How long oil dries under a water varnish is disputed: 2 to 4 days (seen, trade advice) to a month; the stock takes a week.`,
};

export const doesNotHold: Rule = {
    page,
    *examine(plan, figures = atItsWord) {
        for (const { step, blank } of plan.steps) {
            const top = step.kind === 'seal' || step.kind === 'finish' ? laidBy(step) : undefined;
            const face = top === undefined ? undefined : faceBefore(plan, step.index, blank);
            if (top === undefined || face === undefined) continue;
            for (const below of openOn(face, plan)) {
                const coat = laidBy(below);
                const refusal = refusalOf(plan, step, below) ?? wetBelow(plan, step, below);
                if (coat === undefined || refusal === undefined) continue;
                const wait: Fix[] =
                    refusal.after === undefined
                        ? []
                        : longerWait(page.id, plan, below, step, refusal.after.value - refusal.gone, figures);
                yield finding(page, {
                    severity: 'warning',
                    message: said(top, coat, refusal),
                    where: step.where,
                    step: step.index,
                    rests: [refusal.where],
                    related: [{ message: phrase`${coat.name} goes on here.`, where: below.where }],
                    fixes: [...prepare(refusal, coat, step), ...wait],
                });
            }
        }
    },
};

interface Wet extends Refusal {
    readonly wet?: true;
}

function said(top: Named, coat: Named & Laying, { after, once, gone, wet }: Wet): Message {
    if (wet === true && after !== undefined)
        return phrase`${top.name} goes over ${calledInShop(coat)} after ${showTime(gone)}; that needs ${showTime(after.value)} to dry.`;
    if (once !== undefined) {
        const first = once === 'sanded' ? phrase`is sanded dull` : phrase`is wiped clean`;
        const time = after === undefined ? '' : ` and has had ${showTime(after.value)}; here it has had ${showTime(gone)}`;
        return phrase`${top.name} holds on ${coat.name} only once that ${first}${time}.`;
    }
    if (after === undefined)
        return phrase`${top.name} does not hold on ${coat.name}. Sand ${coat.name} off before, or take a finish that belongs on it.`;
    return phrase`${top.name} goes over ${calledInShop(coat)} that has had ${showTime(gone)}: it holds after ${showTime(after.value)}.`;
}

function prepare({ once }: Refusal, coat: Named, step: Step): Fix[] {
    if (once === undefined) return [];
    const statement = preparing(once, `the ${coat.name}`);
    return [{ title: phrase`Add \`${statement}\``, preferred: true, changes: [statementBefore(step, statement)] }];
}

/** What the one below still needs to be dry, where the stock says nothing of the two. Of what was sanded too soon another rule speaks. */
function wetBelow(plan: Plan, top: Step, below: Step): Wet | undefined {
    // Sealed on a wet fill is sealed too late, of which another rule speaks.
    const time = below.kind === 'fill' && top.kind !== 'finish' ? undefined : hardening(below);
    if (time === undefined || isPrepared(plan, 'sanded', top, below.index)) return undefined;
    const gone = elapsed(plan, below.index, top.index);
    // The same again right behind it is one more coat: its drying is left to the maker.
    if (gone === 0 && laidBy(top)?.name === laidBy(below)?.name) return undefined;
    return longEnough(gone, time.value - time.tolerance) ? undefined : { after: time, gone, where: time.where, wet: true };
}

function hardening(step: Step): Quantity | undefined {
    switch (step.kind) {
        case 'seal':
            return step.sealer?.dry;
        case 'finish':
            return step.coat?.dry;
        case 'fill':
            return step.resin?.cure;
        default:
            return undefined;
    }
}

/** The steps whose coats or fills lie open on a face. */
function openOn(face: Face, { steps }: Plan): Step[] {
    const open = new Map<number, number>();
    for (const { column, region } of face.cells) {
        const [layer] = column.layers;
        if ((layer?.kind === 'coat' || layer?.kind === 'resin') && layer.step !== undefined)
            open.set(layer.step, (open.get(layer.step) ?? 0) + area(region));
    }
    const [bare] = face.bare.layers;
    if (bare?.kind === 'coat' && bare.step !== undefined) open.set(bare.step, Number.POSITIVE_INFINITY);
    return [...open].flatMap(([index, size]) => (size > negligible ? (steps[index]?.step ?? []) : []));
}
