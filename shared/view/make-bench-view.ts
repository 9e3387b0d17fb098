import { subtract, union } from '../geometry/boolean';
import { area } from '../geometry/measure';
import { emptyRegion, type Region } from '../geometry/region';
import { rectangle } from '../geometry/shapes';
import { foundPlaceWords } from '../plan/found-place';
import type { LaserPlan } from '../plan/laser-plan';
import type { Memo } from '../plan/memo';
import type { BlankPlan, InlayPlan, Plan, StepPlan } from '../plan/plan';
import { boundariesOf, middle } from '../plan/plan-inlay';
import { allTrades, knownTrades, mayTrade } from '../plan/plan-trade';
import { endOfSetUp, setUpPlace, setUps } from '../plan/set-ups';
import { stepIds } from '../plan/step-key';
import { showMoney } from '../quantity/currency';
import { showArea, showLength } from '../quantity/show';
import { showSupply } from '../quantity/show-supply';
import type { Finding } from '../recipe/finding';
import { isTurnedWrong } from '../sheets/press-facts';
import { cautionFacts, workFacts } from '../sheets/step-facts';
import type { BenchView, BlankView, FactView, HalfView, InlayView, StepView } from './bench-view';
import { grainOf } from './looks';
import { PathTable } from './path-table';
import { pieceView } from './piece-view';
import { roomyPlace } from './roomy-place';
import { makeRunView } from './run-view';
import { tradeView } from './trade-view';
import { unknownWood } from './unknown-wood';

/** What stands around a plan: the file and its version, and why the picture may be old. */
export interface Setting {
    readonly uri: string;
    readonly textVersion: number;
    readonly recipes: BenchView['recipes'];
    readonly stale?: string;
    /** Rules whose fixes have not been tried out yet. */
    readonly trying?: readonly string[];
    /** What other numbers of passes would cost: in this picture, or in the next; absent where nobody asks. */
    readonly trades?: boolean;
}

/**
 * The bench view of a plan. Holds no decision that the plan has not made.
 * @param had names of path data that need not be sent again
 */
export function makeBenchView(
    plan: Plan,
    findings: readonly Finding[],
    { trying = [], trades, ...setting }: Setting,
    memo: Memo,
    had?: readonly string[],
): BenchView {
    const paths = new PathTable(had);
    const { recipe } = plan;
    const ids = stepIds(plan.steps.map(({ step }) => step));
    const frames = plan.faces.map((faces, index) => ({
        step: index - 1,
        pieces: faces.flatMap((face) => {
            const blank = plan.blanks.find((candidate) => candidate.name === face.blank);
            return blank === undefined ? [] : [pieceView(plan, face, blank, paths, memo)];
        }),
    }));
    const places = setUpFacts(plan);
    const trade = trades === undefined ? undefined : trades ? allTrades(plan, memo) : knownTrades(plan);
    const inlays = plan.steps.flatMap((step) =>
        step.inlay === undefined ? [] : [inlayView(plan, step, step.inlay, paths, memo)],
    );
    return {
        version: 1,
        ...setting,
        ...(trades === false && trade === undefined && plan.steps.some(mayTrade) ? { more: true } : {}),
        recipe: recipe.name,
        title: recipe.title || recipe.name,
        revision: recipe.revision,
        make: recipe.make,
        blanks: plan.blanks.map((blank) => blankView(plan, blank.name)),
        steps: plan.steps.map((step, index) => ({ ...stepView(step, ids[index]!, places), ...tradeView(trade?.get(index)) })),
        paths: paths.paths,
        frames,
        inlays,
        findings: findings.map(({ rule, severity, message, step, where, spots, fixes, related }) => ({
            rule,
            severity,
            message,
            ...(step === undefined ? {} : { step }),
            where,
            ...fixOf(fixes),
            ...(trying.includes(rule) ? { trying: true } : {}),
            ...followsOf(related),
            spots: spots ?? [],
        })),
        ...(plan.totals === undefined ? { unknown: plan.unknown ?? '' } : { totals: plan.totals }),
        supplies: plan.supplies.map(({ item, amount, unit, note, cost }) => ({
            item,
            amount: showSupply(amount, unit),
            note,
            ...(cost === undefined || plan.cost === undefined ? {} : { cost: showMoney(cost, plan.cost.currency) }),
        })),
        run: makeRunView(plan),
        cautions: plan.cautions,
    };
}

/** The fix that a person would take without thinking, else the first. */
function fixOf(fixes: Finding['fixes']): { readonly fix?: string } {
    const fix = fixes.find(({ preferred }) => preferred === true) ?? fixes[0];
    return fix === undefined ? {} : { fix: fix.title };
}

/** What follows from a finding, in words. */
function followsOf(related: Finding['related']): { readonly follows?: readonly string[] } {
    const follows = related.flatMap(({ rule, message }) => (rule === undefined ? [] : message));
    return follows.length === 0 ? {} : { follows };
}

function blankView(plan: Plan, name: string): BlankView {
    const found = plan.blanks.find((candidate) => candidate.name === name)!;
    const { blank, size, thickness } = found;
    const wood = blank.sheet?.wood;
    return {
        name,
        label: blank.sheet?.name ?? name,
        width: size?.width ?? 0,
        height: size?.height ?? 0,
        thickness: thickness?.value ?? 0,
        ...(blank.size === undefined ? {} : { unit: blank.size.width.unit }),
        colour: wood?.colour ?? unknownWood.colour,
        burnt: wood?.burnt ?? unknownWood.burnt,
        ...(blank.grain === undefined ? {} : { grain: blank.grain }),
        ...figureOf(found),
        backing: blank.backing,
        ...(blank.size === undefined ? {} : { size: { where: blank.size.where, text: '' } }),
        where: blank.where,
    };
}

function figureOf(blank: BlankPlan): Pick<BlankView, 'figure'> {
    const grain = grainOf(blank);
    return grain === undefined ? {} : { figure: { sawn: grain.sawn, pores: grain.pores } };
}

/** In which set-up each step of the laser is burnt, what lies there, and why it ends. */
function setUpFacts(plan: Plan): ReadonlyMap<number, FactView> {
    const facts = new Map<number, FactView>();
    for (const setUp of setUps(plan)) {
        const end = endOfSetUp(setUp);
        const found = setUp.place === undefined ? '' : `, found ${foundPlaceWords(setUp.place)}`;
        const value = `${setUp.number}, ${setUpPlace(setUp)}${found}${end === undefined ? '' : `, until ${end}`}`;
        for (const { step } of setUp.lasers) facts.set(step.index, { label: 'set-up', value });
    }
    return facts;
}

function stepView(plan: StepPlan, id: string, places: ReadonlyMap<number, FactView>): StepView {
    const { step, title, blank, unplanned, times } = plan;
    const place = places.get(step.index);
    return {
        index: step.index,
        id,
        kind: step.kind,
        title,
        facts: [...workFacts(plan), ...cautionFacts(plan), ...(place === undefined ? [] : [place])],
        ...(blank === undefined ? {} : { blank }),
        ...times,
        ...(unplanned === undefined ? {} : { unplanned }),
        ...movableOf(plan),
        where: step.where,
    };
}

/** With several placements, what moves one of them moves the axis about which the others are mirrored: those are left to the text, as are places that are said once for several lines. */
function movableOf({ step, laser }: StepPlan): Pick<StepView, 'movable'> {
    if (laser === undefined || (step.kind !== 'engrave' && step.kind !== 'cut') || step.placements.length !== 1) return {};
    const [placement] = step.placements;
    const centre = laser.placed[0]?.centre;
    if (
        placement === undefined ||
        placement.places !== undefined ||
        centre === undefined ||
        (placement.kind === 'shape' && placement.at === undefined)
    )
        return {};
    return {
        movable: {
            what: placement.kind === 'art' ? `art ${placement.art.value ?? ''}` : placement.outline.kind,
            x: centre.x,
            y: centre.y,
            unit: placement.at?.x.unit ?? 'mm',
            where: placement.at?.where ?? placement.where,
        },
    };
}

function inlayView(plan: Plan, step: StepPlan, inlay: InlayPlan, paths: PathTable, memo: Memo): InlayView {
    const clash = area(inlay.collides);
    const empty = area(inlay.empty);
    const pocket = inlay.pocketLaser.area;
    const marks = inlay.marks !== undefined && inlay.marks.placed > 0 ? inlay.marks : undefined;
    const good = clash <= Math.max(0.5, 0.01 * pocket);
    return {
        step: step.step.index,
        ...(inlay.turnedOver ? {} : { faceUp: true as const }),
        relief: {
            ...half(plan, inlay.reliefLaser, paths.idOf(inlay.standing), marks && paths.idOf(marks.relief)),
            frame: paths.idOf(frameOf(plan, inlay, memo)),
        },
        pocket: half(plan, inlay.pocketLaser, paths.idOf(inlay.pocketLaser.region), marks && paths.idOf(marks.pocket)),
        meeting: { fits: paths.idOf(inlay.fits), collides: paths.idOf(inlay.collides), empty: paths.idOf(inlay.empty) },
        verdict: good
            ? goodVerdict(inlay, empty)
            : `${isTurnedWrong(inlay) && !inlay.symmetry.mirror ? 'Turned over it is the wrong way round and does not go in' : 'It does not go in'}: ${showArea(clash)} of the ${inlay.relief.kind === 'cut' ? 'part' : 'veneer'} land on the board, and ${showArea(empty)} of the pocket stay empty.`,
        good,
        ...(good ? {} : { amiss: amissOf(inlay) }),
    };
}

function amissOf({ collides, empty }: InlayPlan): NonNullable<InlayView['amiss']> {
    const places = { collides: roomyPlace(collides), empty: roomyPlace(empty) };
    return {
        ...(places.collides === undefined ? {} : { collides: places.collides }),
        ...(places.empty === undefined ? {} : { empty: places.empty }),
    };
}

/** What the laser leaves of the sheet around the relief; nothing where the blank's size is not known or its art is not inverted. */
function frameOf(plan: Plan, { reliefLaser }: InlayPlan, memo: Memo): Region {
    const size = plan.blanks.find(({ name }) => name === reliefLaser.blank)?.size;
    const boundaries = reliefLaser.step.kind === 'cut' ? [reliefLaser.region] : boundariesOf(reliefLaser, memo);
    if (size === undefined || boundaries.length === 0) return emptyRegion;
    const key = `${size.width} ${size.height} ${boundaries.map((boundary) => memo.keyOf(boundary)).join(' ')}`;
    return memo.get('frame', key, () => subtract(rectangle(0, 0, size.width, size.height), union(boundaries)));
}

function goodVerdict({ fit, stack, relief, pocket, turnedOver }: InlayPlan, empty: number): string {
    const isPart = relief.kind === 'cut';
    const goal = pocket.kind === 'cut' ? 'is flush' : 'reaches the floor';
    const seam =
        fit === undefined
            ? ''
            : fit.bottoms
              ? ` and ${goal}, with a seam of ${showLength(fit.seam)}`
              : `, but jams ${showLength(fit.insertion)} in`;
    const left =
        stack === undefined
            ? ''
            : ` ${showLength(stack.left.likely.value)} of ${isPart ? 'the part' : 'veneer'} are left after sanding.`;
    const what = isPart ? `The part, ${turnedOver ? 'turned over' : 'face up'},` : 'The turned-over half';
    return `${what} fits its ${pocket.kind === 'cut' ? 'opening' : 'pocket'}${seam}.${left}${empty > 1 ? ` ${showArea(empty)} around it is clearance.` : ''}`;
}

function half(plan: Plan, laser: LaserPlan, path: string, marks: string | undefined): HalfView {
    const blank = plan.blanks.find((candidate) => candidate.name === laser.blank);
    const wood = blank?.blank.sheet?.wood;
    return {
        blank: laser.blank,
        path,
        colour: wood?.colour ?? unknownWood.colour,
        burnt: wood?.burnt ?? unknownWood.burnt,
        width: blank?.size?.width ?? 0,
        height: blank?.size?.height ?? 0,
        middle: middle(laser),
        ...(marks === undefined ? {} : { marks }),
    };
}
