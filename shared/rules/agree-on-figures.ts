import type { Plan } from '../plan/plan';
import { rehearse } from '../plan/rehearse';
import type { Finding, Severity } from '../recipe/finding';
import type { Step } from '../recipe/step';
import type { Agreed, Figures, Proposal } from './figures';
import type { Rule } from './rule';

/** Figures tried on either side of what was proposed: the nearest first, then ever wider apart. */
const strides = [1, 2, 3, 4, 5, 6, 8, 11, 15, 20, 27, 36, 48, 64, 85, 115, 155, 210];

/** Figures whose answers are tried too; rules that answer each other without end are not listened to for longer. */
const MOST_ANSWERED = 12;

const everywhere = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;

export type Look = (rule: Rule, plan: Plan, figures?: Figures) => readonly Finding[];

/** Who is asked, and whose findings count. */
export interface Asking {
    readonly plan: Plan;
    readonly rules: readonly Rule[];
    readonly look: Look;
    /** Whether a finding is allowed by the maker and does not count. */
    readonly isAllowed: (finding: Pick<Finding, 'rule' | 'step' | 'firm'>) => boolean;
    /** Called before each rule; may throw to give up. */
    readonly checkpoint?: () => void;
}

/**
 * What the rules say of a plan, with one figure wherever several of them would have the same number changed. Each takes part with
 * the range of figures at which it is silent, found by trying figures out on the plan's own sums; the figure lies in all of the
 * ranges, those of rules included that have nothing to say as yet.
 */
export function agreeOnFigures(asking: Asking): Finding[] {
    const { plan, rules, look, isAllowed, checkpoint = () => {} } = asking;
    const proposals: Proposal[] = [];
    const asked = new Set<string>();
    const listening: Figures = {
        agree(proposal) {
            asked.add(proposal.rule);
            if (!isAllowed({ rule: proposal.rule, step: proposal.step.index })) proposals.push(proposal);
            return { figure: proposal.figure };
        },
        suits(rule) {
            asked.add(rule);
            return true;
        },
    };
    const first = rules.map((rule) => ({ rule, found: look(rule, plan, listening) }));
    if (asked.size === 0) return first.flatMap(({ found }) => found);
    const agreement = new Agreement(asking, proposals, first);
    return first.flatMap(({ rule, found }) => {
        if (!asked.has(rule.page.id)) return found;
        checkpoint();
        return look(rule, plan, agreement);
    });
}

/** What one rule says of a plan. */
interface Heard {
    readonly rule: Rule;
    readonly found: readonly Finding[];
}

/** What is said of a plan: how often by each rule, and of which places. */
interface Said {
    readonly counts: ReadonlyMap<string, number>;
    /** How grave the gravest is of a place. */
    readonly places: ReadonlyMap<string, number>;
}

class Agreement implements Figures {
    private readonly agreed = new Map<string, Agreed>();
    private now: Said | undefined;

    /** @param first what every rule says of the plan as it is */
    constructor(
        private readonly asking: Asking,
        private readonly proposals: readonly Proposal[],
        private readonly first: readonly Heard[],
    ) {}

    agree(proposal: Proposal): Agreed {
        const key = keyOf(proposal);
        const all = this.proposals.filter((other) => keyOf(other) === key);
        const known = this.agreed.get(key) ?? this.settle(all.length === 0 ? [proposal] : all);
        this.agreed.set(key, known);
        // Of several that do not come together each names another.
        const other = all.find(({ rule }) => rule !== proposal.rule);
        return known.against === proposal.rule && other !== undefined ? { against: other.rule } : known;
    }

    suits(rule: string, changed: readonly Step[]): boolean {
        // What was asked for is judged for the first time, and a hint about it is no reason to leave the maker without a way.
        return this.against(changed, [rule], { from: gravity.warning }) === undefined;
    }

    private settle(all: readonly Proposal[]): Agreed {
        const rules = [...new Set(all.map(({ rule }) => rule))];
        let against: string | undefined;
        const change = all[0]!.with;
        if (change === undefined) return { figure: Math.max(...all.map(({ figure }) => figure)) };
        const tried = new Set<number>();
        const first = [...all.map(({ figure }) => figure), ...answersTo(all[0]!, this.proposals)].filter((figure) =>
            isBetween(figure, all[0]!),
        );
        const beside = figuresBeside(all);
        for (let figure = first.shift() ?? beside.shift(); figure !== undefined; figure = first.shift() ?? beside.shift()) {
            if (tried.has(figure)) continue;
            tried.add(figure);
            const answers: Proposal[] = [];
            const said = this.against(change(figure), rules, tried.size <= MOST_ANSWERED ? { heard: answers } : {});
            if (said === undefined) return { figure };
            against ??= said;
            first.push(...answersTo(all[0]!, answers));
        }
        return { against: against ?? rules[0]! };
    }

    /**
     * The first rule that speaks, or goes on speaking, once steps are changed; undefined where none does.
     * @param from gravity below which what is new does not count
     * @param heard takes what the rules would have instead; without it none is asked once one has spoken
     */
    private against(
        changed: readonly Step[],
        gone: readonly string[],
        { from = gravity.hint, heard }: { readonly from?: number; readonly heard?: Proposal[] } = {},
    ): string | undefined {
        const { plan, rules } = this.asking;
        this.now ??= saidIn(this.first.filter(({ rule }) => followsFigures(rule)).flatMap(({ found }) => this.counting(found)));
        const { counts, places } = this.now;
        const then = rehearse(plan, changed);
        // Those that would have it changed come first: most figures already fail with them.
        const first = new Map<Rule, readonly Finding[]>();
        for (const rule of rules.filter(({ page }) => gone.includes(page.id))) first.set(rule, this.ask(rule, then, heard));
        const asking = saidIn([...first.values()].flat());
        const stays = gone.find((rule) => asking.counts.has(rule) && asking.counts.get(rule)! >= (counts.get(rule) ?? 0));
        if (stays !== undefined) return stays;
        const isWorse = (finding: Finding): boolean =>
            gravity[finding.severity] >= from && gravity[finding.severity] > (places.get(placeOf(finding)) ?? -1);
        let worse: Finding | undefined;
        for (const rule of rules) {
            const found = first.get(rule) ?? this.ask(rule, then, heard);
            worse ??= found.find(isWorse);
            if (worse !== undefined && heard === undefined) break;
        }
        return worse?.rule;
    }

    /** What a rule says of a plan that is tried out. */
    private ask(rule: Rule, plan: Plan, heard: Proposal[] | undefined): readonly Finding[] {
        if (!followsFigures(rule)) return [];
        const hearing: Figures = {
            agree(proposal) {
                heard?.push(proposal);
                return { figure: proposal.figure };
            },
            suits: () => true,
        };
        return this.counting(this.asking.look(rule, plan, hearing));
    }

    private counting(found: readonly Finding[]): readonly Finding[] {
        return found.filter((finding) => !this.asking.isAllowed(finding));
    }
}

function followsFigures({ followsDrawing }: Rule): boolean {
    return followsDrawing !== true;
}

function saidIn(findings: readonly Finding[]): Said {
    const counts = new Map<string, number>();
    const places = new Map<string, number>();
    for (const finding of findings) {
        const place = placeOf(finding);
        counts.set(finding.rule, (counts.get(finding.rule) ?? 0) + 1);
        places.set(place, Math.max(places.get(place) ?? 0, gravity[finding.severity]));
    }
    return { counts, places };
}

function keyOf({ step, of }: Proposal): string {
    return `${step.index} ${of}`;
}

const gravity = { hint: 0, info: 1, warning: 2, error: 3 } as const satisfies Readonly<Record<Severity, number>>;

function placeOf({ rule, step, where, related }: Finding): string {
    return `${rule} ${step} ${where.uri} ${where.offset} ${related.map((each) => each.where.offset).join(' ')}`;
}

function isBetween(figure: number, { between: [low, high] = everywhere }: Proposal): boolean {
    return figure >= low && figure <= high;
}

/** Round figures ever farther from what was proposed. */
function figuresBeside(all: readonly Proposal[]): number[] {
    const proposed = all.map(({ figure }) => figure);
    const { grid } = all[0]!;
    if (grid === undefined) return [];
    const [least, most] = [Math.min(...proposed), Math.max(...proposed)];
    // Between two that disagree is where both may be served.
    const inside = (figure: number): number => (figure >= least && figure <= most ? 0 : 1);
    return strides
        .flatMap((stride) => [proposed[0]! + stride * grid, proposed[0]! - stride * grid])
        .toSorted((a, b) => inside(a) - inside(b))
        .filter((figure) => isBetween(figure, all[0]!));
}

/** What those who speak at a figure would have instead of it: far from a slip of the unit it is only found so. */
function answersTo(to: Proposal, heard: readonly Proposal[]): number[] {
    if (to.grid === undefined) return [];
    const isSame = ({ step, of }: Proposal): boolean =>
        step.index === to.step.index && (of === to.of || (of === 'depth' && to.of === 'depth solved again'));
    return heard.filter((each) => isSame(each) && isBetween(each.figure, to)).map(({ figure }) => figure);
}
