import type { BookedPlan } from './booked-plan';

/** Version of the JSON's shape. */
export const seasonSchema = 1;

/** One run, with the plan for as many pieces as were begun; absent where the run does not say how many. */
export interface SeasonEntry {
    readonly recipe: string;
    readonly title: string;
    /** ISO 8601. */
    readonly date: string;
    readonly made?: number;
    readonly spoiled?: number;
    /** s at the bench and beside the laser. */
    readonly took?: number;
    readonly by?: string;
    readonly plan?: BookedPlan;
}

/** What came of a season: sums over the runs that say it. Times in s. */
export interface Season {
    readonly schema: typeof seasonSchema;
    /** Days of the first and the last run. */
    readonly from?: string;
    readonly to?: string;
    readonly recipes: readonly SeasonRow[];
    readonly total: SeasonSums;
    /** Who made how much. */
    readonly makers: readonly { readonly by: string; readonly made: number; readonly took: number }[];
    /** ISO 4217; absent where no shop says one, or shops differ. */
    readonly currency?: string;
}

export interface SeasonSums {
    readonly runs: number;
    /** Runs that do not say how many pieces came of them: they are in no sum but `runs`. */
    readonly uncounted: number;
    readonly made: number;
    readonly spoiled: number;
    /** Hours planned for what was begun. */
    readonly planned: number;
    /** Hours that runs say, and what was planned for those runs. */
    readonly took: number;
    readonly plannedOfTook: number;
    /** Cost as planned of what was begun; absent where it is not known of some run. */
    readonly cost?: number;
    /** The same with the hours that runs say in place of the planned ones; absent where no run says any. */
    readonly realCost?: number;
    /** The real cost for each piece that came out well. */
    readonly realEach?: number;
}

export interface SeasonRow extends SeasonSums {
    readonly recipe: string;
    readonly title: string;
}

export function makeSeason(entries: readonly SeasonEntry[]): Season {
    const names = [...new Set(entries.map(({ recipe }) => recipe))];
    const currencies = new Set(entries.flatMap(({ plan }) => plan?.cost?.currency ?? []));
    const [currency] = currencies;
    const isPriced = currencies.size === 1;
    const dates = entries.map(({ date }) => date).sort();
    const [from] = dates;
    const to = dates.at(-1);
    return {
        schema: seasonSchema,
        ...(from === undefined || to === undefined ? {} : { from, to }),
        recipes: names.map((name) => {
            const own = entries.filter(({ recipe }) => recipe === name);
            return { recipe: name, title: own[0]!.title, ...sumsOf(own, isPriced) };
        }),
        total: sumsOf(entries, isPriced),
        makers: makersOf(entries),
        ...(isPriced && currency !== undefined ? { currency } : {}),
    };
}

function sumsOf(entries: readonly SeasonEntry[], isPriced: boolean): SeasonSums {
    const counted = entries.filter(({ plan }) => plan !== undefined);
    const timed = counted.filter(({ took }) => took !== undefined);
    const sum = (of: readonly SeasonEntry[], value: (entry: SeasonEntry) => number): number =>
        of.reduce((all, entry) => all + value(entry), 0);
    const planned = ({ plan }: SeasonEntry): number => plan?.schedule.attended ?? 0;
    const isKnown = isPriced && counted.length > 0 && counted.every(({ plan }) => plan?.cost !== undefined);
    const made = sum(counted, (entry) => entry.made ?? 0);
    const real = isKnown && timed.length > 0 ? sum(counted, realCostOf) : undefined;
    return {
        runs: entries.length,
        uncounted: entries.length - counted.length,
        made,
        spoiled: sum(counted, ({ spoiled = 0 }) => spoiled),
        planned: sum(counted, planned),
        took: sum(timed, ({ took = 0 }) => took),
        plannedOfTook: sum(timed, planned),
        ...(isKnown ? { cost: sum(counted, ({ plan }) => plan?.cost?.total ?? 0) } : {}),
        ...(real === undefined ? {} : { realCost: real }),
        ...(real === undefined || made === 0 ? {} : { realEach: real / made }),
    };
}

/** Materials and laser as planned, the work as long as it took; as planned where the run does not say how long. */
function realCostOf({ plan, took }: SeasonEntry): number {
    const cost = plan?.cost;
    if (cost === undefined) return 0;
    if (took === undefined) return cost.total;
    return (cost.materials + cost.machine + (took / 3600) * cost.hourly) * (1 + cost.overheadShare);
}

function makersOf(entries: readonly SeasonEntry[]): Season['makers'] {
    const makers = new Map<string, { by: string; made: number; took: number }>();
    for (const { by, made = 0, took = 0 } of entries) {
        if (by === undefined) continue;
        const known = makers.get(by) ?? { by, made: 0, took: 0 };
        makers.set(by, { by, made: known.made + made, took: known.took + took });
    }
    return [...makers.values()];
}
