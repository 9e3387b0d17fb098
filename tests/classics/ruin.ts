import { expect } from 'vitest';
import { editsOf } from '../../language/editing/text-edits';
import type { Finding } from '../../shared/recipe/finding';
import { expectFixesToHold } from '../kit/fixes-hold';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { drawings } from './stock';

/** One of the ways in which boards are ruined, and what the maker should be told of it. */
export interface Ruin {
    readonly text: string;
    readonly rule: string;
    /** The words that are pointed at. */
    readonly at: string;
    /** What is said; the groups are the numbers by which `by` mends the text. */
    readonly says: RegExp;
    /** Which fix mends it, by the beginning of its title. */
    readonly fix?: string | RegExp;
    /** Nothing else is an error or a warning as long as it is not mended. */
    readonly alone?: true;
    /** What is judged for the first time once a fix is taken, as `rule > other rule`. */
    readonly judged?: readonly string[];
    /** Mends the text by hand, with the numbers that the message gave. */
    readonly by?: (text: string, numbers: readonly string[]) => string;
}

let kit: Promise<MemoryWorkshop> | undefined;

/** A fault is seen, told with its number and mended by it, and nothing else is wrong then. */
export async function expectRuin({ text, rule, at, says, fix, by, alone, judged = [] }: Ruin): Promise<void> {
    kit ??= memoryWorkshop(drawings);
    const shop = await kit;
    await shop.forget();
    const found = await shop.findings(text);
    const finding = found.find((each) => each.rule === rule && each.where.length === at.length && wordsAt(text, each) === at);
    expect(finding, `${rule} at “${at}” among\n${found.map((each) => said(each, text)).join('\n')}`).toBeDefined();
    expect(finding!.message).toMatch(says);
    if (alone) expect(found.filter((each) => isLoud(each) && each !== finding).map((each) => said(each, text))).toEqual([]);
    const after = by === undefined ? withFix(text, finding!, fix) : by(text, says.exec(finding!.message)!.slice(1));
    expect(after, 'the text after mending').not.toBe(text);
    // Looked at, each of them: what could be judged only once something else was mended.
    expect([...new Set(await expectFixesToHold(shop, text))].toSorted()).toEqual(judged);
    const left = (await shop.findings(after)).filter(isLoud);
    expect(
        left.map((each) => said(each, after)),
        after.slice(after.indexOf('\nrecipe')),
    ).toEqual([]);
    expect((await shop.findings(after)).filter((each) => each.rule === rule).map(({ message }) => message)).toEqual([]);
}

function isLoud({ severity }: Finding): boolean {
    return severity === 'error' || severity === 'warning';
}

function withFix(text: string, { rule, fixes }: Finding, wanted: string | RegExp = ''): string {
    const taken = fixes.find(({ title }) => (typeof wanted === 'string' ? title.startsWith(wanted) : wanted.test(title)));
    expect(taken, `a fix of ${rule} called ${wanted} among ${fixes.map(({ title }) => title).join('; ')}`).toBeDefined();
    return taken!.changes
        .flatMap((change) => editsOf(change, text))
        .sort((a, b) => b.offset - a.offset || b.length - a.length)
        .reduce((now, { offset, length, text: put }) => now.slice(0, offset) + put + now.slice(offset + length), text);
}

function wordsAt(text: string, { where }: Finding): string {
    return text.slice(where.offset, where.offset + where.length);
}

function said(finding: Finding, text: string): string {
    return `${finding.severity} ${finding.rule} at “${wordsAt(text, finding)}”: ${finding.message} [${finding.fixes.map(({ title }) => title).join('; ')}]`;
}
