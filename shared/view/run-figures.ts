import type { Plan } from '../plan/plan';
import { showMoney } from '../quantity/currency';
import { showRatio, showTime } from '../quantity/show';
import { showSupply } from '../quantity/show-supply';
import { costLines } from '../sheets/cost-lines';

/** What a plan adds to a recipe's `make`. Plain data. */
export interface RunFigures {
    /** Behind the number, in few words. */
    readonly hint: string;
    /** On hover, Markdown. */
    readonly hover: string;
    /** How long the laser, the hands and the waiting take, in few words. */
    readonly time: string;
    /** What is used up, in few words. */
    readonly quantities: string;
}

/** How long the run takes, what it needs and what it costs, for all the pieces. */
export function makeRunFigures(plan: Plan): RunFigures {
    const { schedule, cost, recipe, cuttings, supplies, unknown } = plan;
    const many = `**${recipe.make} ${recipe.make === 1 ? 'piece' : 'pieces'}**`;
    const each = recipe.make === 1 ? '' : ' each';
    const ready = `ready after ${showTime(schedule.ready)}`;
    const price = cost === undefined ? '' : `, ${showMoney(cost.price, cost.currency)}${each}`;
    const days = schedule.workday === undefined ? '' : `, working ${showTime(schedule.workday)} a day`;
    const parts = [
        unknown !== undefined
            ? `${many}: time, amounts and cost are unknown. ${escapeMarkdown(unknown)}.`
            : `${many}: ${ready}${days}. ${showTime(schedule.attended)} at the bench and the laser (the laser runs ${showTime(schedule.machine)}), ${showTime(schedule.idle)} of waiting, in ${sittings(schedule.sittings.length)}.`,
        ...cuttings.map(
            ({ sheet, yielded }) =>
                `${yielded.sheets} × ${escapeMarkdown(sheet.name)}, ${showRatio(yielded.used)} of it in blanks${yielded.tooLarge.length === 0 ? '' : `; ${yielded.tooLarge.map(escapeMarkdown).join(', ')} does not fit`}`,
        ),
        unknown === undefined ? consumables(supplies) : '',
        ...(cost === undefined ? [] : [costTable(plan)]),
    ];
    if (unknown !== undefined) {
        const words = `time unknown: ${unknown}`;
        return {
            hint: 'time unknown',
            hover: parts.filter((part) => part !== '').join('\n\n'),
            time: words,
            quantities: 'unknown',
        };
    }
    return {
        hint: `${ready}${price}`,
        hover: parts.filter((part) => part !== '').join('\n\n'),
        time: `${showTime(schedule.machine)} of laser, ${showTime(schedule.attended)} attended, ${ready}`,
        quantities: shortList(supplies),
    };
}

function sittings(count: number): string {
    return count === 1 ? 'one sitting' : `${count} sittings`;
}

function consumables(supplies: Plan['supplies']): string {
    const used = supplies.filter(({ kind }) => kind !== 'board' && kind !== 'veneer');
    const words = used.map(({ item, amount, unit }) => `${escapeMarkdown(item)} ${showSupply(amount, unit)}`);
    return words.length === 0 ? '' : `Used up: ${words.join(', ')}.`;
}

/** The materials that are bought for it, the first few by name. */
function shortList(supplies: Plan['supplies']): string {
    const words = supplies
        .filter(({ kind }) => kind !== 'abrasive' && kind !== 'tape')
        .map(({ item, amount, unit }) => `${item} ${showSupply(amount, unit)}`);
    return words.length > 5 ? `${words.slice(0, 5).join(', ')} and ${words.length - 5} more` : words.join(', ');
}

function costTable({ cost, recipe }: Plan): string {
    const rows = costLines(cost!, recipe.make).map(
        ({ label, amount, note }) => `| ${label} | ${amount} | ${escapeMarkdown(note)} |`,
    );
    return ['| | | |', '| :-- | --: | :-- |', ...rows].join('\n');
}

/** Names as they are, also in Markdown. */
function escapeMarkdown(text: string): string {
    return text.replace(/[\\`*_<>[\]#|]/g, '\\$&');
}
