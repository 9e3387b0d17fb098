import { burnPieces } from './next-piece';
import { burnTones, type Toning, tonings } from './tones';
import { burnVeneers } from './veneers';
import { driftsOf, type Rule, type Ways, type WorldName, worlds, yearsOf } from './year-of-laser';

const everyWorld = Object.keys(worlds) as WorldName[];

/** Workshops in which a drift is looked for: pockets that come out otherwise than squares all along, and coarse gauges. */
const workshops: readonly Ways[] = [{}, { offset: 0.1 }, { offset: -0.1 }, { gauge: 0.05 }, { gauge: 0.1 }];

/** @param words `through`, `tone`, `pieces`, `drift` or nothing; then the first seed, how many years, and the worlds: all of them where none is named */
export function simulate(words: readonly string[]): void {
    if (words[0] === 'through') {
        sayVeneers(words.slice(1));
        return;
    }
    if (words[0] === 'pieces') {
        sayPieces(words.slice(1));
        return;
    }
    if (words[0] === 'tone') {
        sayTones(words.slice(1));
        return;
    }
    const isDrift = words[0] === 'drift';
    const [first = '1', years = '30', ...names] = isDrift ? words.slice(1) : words;
    const seeds = Array.from({ length: Number(years) }, (_, at) => Number(first) + at);
    console.log(`${years} years a world, seeds ${seeds[0]} to ${seeds.at(-1)}`);
    for (const name of names.length === 0 ? everyWorld : (names as WorldName[])) {
        if (isDrift) sayDrifts(name, seeds);
        else sayYears(name, seeds);
    }
}

function sayYears(name: WorldName, seeds: readonly number[]): void {
    const rules: readonly Rule[] = ['by day', 'all alike', 'coupon only'];
    for (const rule of rules) {
        const { year, worstQuarter, held, readHeld } = yearsOf(worlds[name], seeds, rule);
        console.log(
            `${name.padEnd(15)} ${rule.padEnd(12)} rms ${percent(year)}, worst quarter ${percent(worstQuarter)}, within what was told ${percent(held)}, as measured ${percent(readHeld)}`,
        );
    }
}

function sayDrifts(name: WorldName, seeds: readonly number[]): void {
    for (const ways of workshops) {
        const { early, ever, middleDay } = driftsOf(worlds[name], seeds, ways);
        const { offset = 0, gauge = 0.01 } = ways;
        console.log(
            `${name.padEnd(15)} pockets ${String(Math.round(100 * offset)).padStart(3)} % deeper, gauge ${gauge} mm: drift told in ${percent(early)} within 20 days of runs, ${percent(ever)} in a year; half of the years by day ${middleDay}`,
        );
    }
}

function sayVeneers([first = '1', count = '4000']: readonly string[]): void {
    const seeds = Array.from({ length: Number(count) }, (_, at) => Number(first) + at);
    for (const squares of [3, 4, 6, 8]) {
        for (const sure of [undefined, 0.9, 0.975, 0.99]) {
            const { asBought, thickest, time, refused } = burnVeneers(seeds, sure, squares);
            const how = sure === undefined ? 'median' : `${100 * sure} % sure`;
            console.log(
                `${squares} squares, ${how.padEnd(11)} skin left in ${percent(asBought)} of veneers as bought, ${percent(thickest)} of the thickest; time ${time.toFixed(2)}, too wide to burn by ${percent(refused)}`,
            );
        }
    }
}

function sayTones([first = '1', count = '300']: readonly string[]): void {
    const seeds = Array.from({ length: Number(count) }, (_, at) => Number(first) + at);
    for (const toning of Object.keys(tonings) as Toning[]) {
        for (const asked of [0.3, 0.6, 0.85, 0.95, 1]) {
            const { bias, rms, covered, half } = burnTones(toning, asked, seeds);
            console.log(
                `${toning.padEnd(20)} ${percent(asked)} of its darkest asked: bias ${percent(bias)}, rms ${percent(rms)}, new squares within what was told ${percent(covered)}, half width ${percent(half)}`,
            );
        }
    }
}

function sayPieces([first = '1', count = '1000']: readonly string[]): void {
    const seeds = Array.from({ length: Number(count) }, (_, at) => Number(first) + at);
    for (const boards of [0, 0.05, 0.1, 0.15]) {
        for (const [how, declared, runs] of [
            ['declared', boards, 0],
            ['usual', undefined, 0],
            ['4 runs', undefined, 4],
            ['8 runs', undefined, 8],
        ] as const) {
            const { covered, half, needed } = burnPieces(boards, declared, seeds, runs);
            console.log(
                `boards differ by ${percent(boards)}, ${how.padEnd(8)}: next pieces within what was told ${percent(covered)}, half width ${percent(half)}, ${(half / needed).toFixed(2)} times what it takes`,
            );
        }
    }
}

function percent(ratio: number): string {
    return `${(100 * ratio).toFixed(2).padStart(6)} %`;
}
