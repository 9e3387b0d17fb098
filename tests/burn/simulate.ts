import { type Rule, type WorldName, worlds, yearsOf } from './year-of-laser';

/** @param words the first seed, how many years, and the worlds: all of them where none is named */
export function simulate([first = '1', years = '30', ...names]: readonly string[]): void {
    const seeds = Array.from({ length: Number(years) }, (_, at) => Number(first) + at);
    const rules: readonly Rule[] = ['by day', 'all alike', 'coupon only'];
    console.log(`${years} years a world, seeds ${seeds[0]} to ${seeds.at(-1)}`);
    for (const name of names.length === 0 ? (Object.keys(worlds) as WorldName[]) : (names as WorldName[])) {
        for (const rule of rules) {
            const { year, worstQuarter, held } = yearsOf(worlds[name], seeds, rule);
            console.log(
                `${name.padEnd(15)} ${rule.padEnd(12)} rms ${percent(year)}, worst quarter ${percent(worstQuarter)}, within what was told ${percent(held)}`,
            );
        }
    }
}

function percent(ratio: number): string {
    return `${(100 * ratio).toFixed(2).padStart(6)} %`;
}
