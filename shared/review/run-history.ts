import type { BoardRuns } from '../burn/board-runs';
import { coverageFactor } from '../burn/distributions';
import { leastSquares } from '../burn/least-squares';
import type { Plan } from '../plan/plan';
import type { Burn, BurnsPlan } from '../plan/plan-burns';
import type { Interval } from '../quantity/interval';
import type { Quantity } from '../quantity/quantity';
import { showLength, showLengthInterval, showNumber, showQuantity, showRatio, showSpeed } from '../quantity/show';
import type { Recipe } from '../recipe/recipe';
import type { BurntStep, Run } from '../recipe/run';

/** Version of the JSON's shape: goes up when a reader would have to change. */
export const historySchema = 2;

/** What became of a recipe's runs, and where its depths are going. Plain data; numbers in base units. */
export interface RunHistory {
    readonly schema: typeof historySchema;
    readonly recipe: string;
    readonly title: string;
    /** From the oldest to the latest; `earlier` are not told. */
    readonly runs: readonly PastRun[];
    readonly earlier: number;
    /** How its depths met their plans, by what was burnt with what; all its runs count. */
    readonly met: readonly PlansMet[];
    /** Where the power of its laser has been going, by all runs in sight on its boards and veneers. */
    readonly boards: readonly PowerHistory[];
}

export interface PastRun {
    readonly date: string;
    readonly revision?: number;
    readonly laser?: string;
    readonly planned: PlannedBy;
    readonly steps: readonly PastStep[];
    readonly notes: readonly string[];
    /** How warm the workshop was, as it is shown. */
    readonly temperature?: string;
    readonly photos?: readonly string[];
    readonly links?: readonly string[];
}

/** What a run keeps besides its figures, each in a line of words. */
export function keptBeside({ temperature, photos = [], links = [] }: PastRun): string[] {
    return [
        ...(temperature === undefined ? [] : [`Workshop at ${temperature}`]),
        ...photos.map((path) => `Photo: ${path}`),
        ...links.map((address) => `Link: ${address}`),
    ];
}

/** Which plan a run is held against. */
export interface PlannedBy {
    /** What the run itself keeps, the plan of its day, of the newest version of its issue, or the one that stands there now. */
    readonly by: 'the run' | 'its day' | 'its issue' | 'the present plan';
    /** That of the plan. */
    readonly revision: number;
    /** Where it was found. */
    readonly commit?: string;
}

export interface PastStep {
    readonly step: string;
    readonly sheet?: string;
    readonly rows: readonly PastRow[];
}

export interface PastRow {
    readonly what: 'depth' | 'depth after each pass' | 'width' | 'tone' | 'through' | 'power' | 'speed' | 'pitch' | 'passes';
    readonly planned?: string;
    /** Measured, or as it was set. */
    readonly actual?: string;
    /** Measured over planned. */
    readonly ratio?: number;
}

export interface PlansMet {
    readonly laser: string;
    readonly sheet: string;
    /** Measured over planned, the mean of each day. */
    readonly days: readonly { readonly date: string; readonly ratio: number }[];
    /** Mean over the days with the range in which it lies (95 %); absent with fewer than two. */
    readonly mean?: Interval;
    /** Measured depths that are left out, since the plan that they followed is not known. */
    readonly leftOut: number;
}

export type PowerHistory = Omit<BoardRuns, 'latest'>;

/** A run with the plan that it is held against. */
export interface HeldRun {
    readonly run: Run;
    readonly plan: BurnsPlan;
    readonly planned: PlannedBy;
}

/**
 * @param boards what the present plan says of runs on them
 * @param last so many of the latest runs are told one by one; all of them count in the rest
 */
export function runHistory(
    { recipe, boards }: Pick<Plan, 'recipe' | 'boards'>,
    held: readonly HeldRun[],
    last: number,
): RunHistory {
    const inOrder = held.toSorted((a, b) =>
        a.run.date.value < b.run.date.value ? -1 : a.run.date.value > b.run.date.value ? 1 : 0,
    );
    const told = inOrder.slice(Math.max(0, inOrder.length - last));
    return {
        schema: historySchema,
        recipe: recipe.name,
        title: recipe.title,
        runs: told.map(pastRun),
        earlier: inOrder.length - told.length,
        met: plansMet(inOrder, recipe),
        boards: boards.map(({ latest: _, ...board }) => board),
    };
}

function pastRun({ run, plan, planned }: HeldRun): PastRun {
    const laser = run.laser ?? plan.recipe.laser;
    return {
        date: run.date.value,
        ...(run.revision !== undefined && { revision: run.revision }),
        ...(laser !== undefined && { laser: laser.name }),
        planned: keepsPlan(run) ? { ...planned, by: 'the run' } : planned,
        steps: run.burnt.map((burnt) => pastStep(burnt, plan)),
        notes: run.notes,
        ...(run.temperature !== undefined && { temperature: showQuantity(run.temperature) }),
        ...(run.photos !== undefined && run.photos.length > 0 && { photos: run.photos }),
        ...(run.links !== undefined && run.links.length > 0 && { links: run.links }),
    };
}

/** Every depth of it stands beside the one that was planned. */
function keepsPlan({ burnt }: Run): boolean {
    const measured = burnt.filter(({ depth }) => depth !== undefined);
    return measured.length > 0 && measured.every(({ planned }) => planned !== undefined);
}

function pastStep(burnt: BurntStep, plan: BurnsPlan): PastStep {
    const burn = burnOf(burnt, plan);
    const sheet = sheetOf(burnt, plan);
    return { step: burnt.step.value ?? '', ...(sheet !== undefined && { sheet }), rows: rowsOf(burnt, burn) };
}

function rowsOf(burnt: BurntStep, burn: Burn | undefined): PastRow[] {
    const { depth, width, power, speed, pitch, passes } = burnt;
    const settings = burn?.settings;
    const ratio = ratioOf(burnt, burn);
    const rows: PastRow[] = [];
    const row = (what: PastRow['what'], planned: string | undefined, actual: string | undefined): void => {
        if (actual !== undefined) rows.push({ what, ...(planned !== undefined && { planned }), actual });
    };
    row('depth', plannedDepth(burnt, burn), depth && showQuantity(depth));
    if (ratio !== undefined) rows.push({ ...rows.pop()!, ratio });
    row('depth after each pass', undefined, burnt.passDepths?.map((each) => showQuantity(each)).join(', '));
    row('width', undefined, width && showQuantity(width));
    row('tone', burn?.tone === undefined ? undefined : showRatio(burn.tone), burnt.tone && showQuantity(burnt.tone));
    row('through', burn?.through === true ? 'yes' : undefined, burnt.through && (burnt.through.value ? 'yes' : 'no'));
    row('power', settings && plannedPower(settings, power), power && showQuantity(power));
    row('speed', settings && showSpeed(settings.speed, speed?.unit), speed && showQuantity(speed));
    row('pitch', settings && showLength(settings.pitch, pitch?.unit), pitch && showQuantity(pitch));
    row('passes', settings && String(settings.passes), power === undefined ? undefined : String(passes));
    return rows;
}

/** As it is written beside the measured one, else as it is worked out. */
function plannedDepth({ planned, depth }: BurntStep, burn: Burn | undefined): string | undefined {
    if (planned !== undefined) return showQuantity(planned);
    const wished = burn?.through === false ? burn.depth : undefined;
    return wished && showLengthInterval(wished, depth?.unit);
}

function plannedPower({ power, powerRatio }: NonNullable<Burn['settings']>, written: Quantity | undefined): string {
    return written?.dimension !== 'power' && Number.isFinite(powerRatio) ? showRatio(powerRatio) : `${showNumber(power, 1)} W`;
}

/** Measured over planned depth. */
function ratioOf({ depth, planned }: BurntStep, burn: Burn | undefined): number | undefined {
    if (depth !== undefined && planned !== undefined && planned.value > 0) return depth.value / planned.value;
    if (depth === undefined || burn?.depth === undefined || burn.through || !(burn.depth.value > 0)) return undefined;
    return depth.value / burn.depth.value;
}

function burnOf({ step }: BurntStep, plan: BurnsPlan): Burn | undefined {
    return plan.burns.find((burn) => burn.step.name === step.value);
}

function sheetOf(burnt: BurntStep, plan: BurnsPlan): string | undefined {
    const blank = burnOf(burnt, plan)?.blank;
    return burnt.sheet ?? plan.blanks.find(({ name }) => name === blank)?.blank.sheet?.name;
}

function plansMet(held: readonly HeldRun[], recipe: Recipe): PlansMet[] {
    const found = new Map<string, { laser: string; sheet: string; ratios: Map<string, number[]>; leftOut: number }>();
    for (const { run, plan, planned } of held) {
        const laser = (run.laser ?? plan.recipe.laser)?.name;
        for (const burnt of run.burnt) {
            const sheet = sheetOf(burnt, plan);
            const ratio = ratioOf(burnt, burnOf(burnt, plan));
            if (laser === undefined || sheet === undefined || ratio === undefined) continue;
            const key = `${laser} ${sheet}`;
            const known = found.get(key) ?? { laser, sheet, ratios: new Map<string, number[]>(), leftOut: 0 };
            found.set(key, known);
            // Held against another revision's plan, a depth says nothing of how well it was met.
            const isKnown = burnt.planned !== undefined || planned.by !== 'the present plan';
            const followed = isKnown || run.revision === undefined || run.revision === recipe.revision;
            const date = run.date.value;
            if (followed) known.ratios.set(date, [...(known.ratios.get(date) ?? []), ratio]);
            else known.leftOut++;
        }
    }
    return [...found.values()].map(({ ratios, ...rest }) => {
        const days = [...ratios].map(([date, of]) => ({ date, ratio: of.reduce((sum, each) => sum + each, 0) / of.length }));
        const mean = meanOf(days.map(({ ratio }) => ratio));
        return { ...rest, days, ...(mean !== undefined && { mean }) };
    });
}

function meanOf(values: readonly number[]): Interval | undefined {
    const fit = leastSquares(
        values.map(() => [1]),
        values,
    );
    if (fit?.errors === undefined) return undefined;
    const value = fit.parameters[0]!;
    const half = coverageFactor(0.95, fit.degreesOfFreedom) * fit.errors[0]!;
    return { value, low: value - half, high: value + half };
}
