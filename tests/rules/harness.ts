import { beforeAll, expect } from 'vitest';
import { editsOf } from '../../language/editing/text-edits';
import type { Finding } from '../../shared/recipe/finding';
import { expectInVariants, looksAtVariants } from '../kit/in-variants';
import { type MemoryWorkshop, memoryWorkshop } from '../kit/memory-workshop';
import { art, shop } from '../kit/shop';

let kit: MemoryWorkshop;

/** Opens a workshop in memory once for a test file; the shop's art and more of the test's own. */
export function workshop(more: Readonly<Record<string, string | Uint8Array>> = {}): void {
    beforeAll(async () => {
        kit = await memoryWorkshop({ ...art, ...more });
    });
}

export async function all(text: string): Promise<Finding[]> {
    return kit.findings(text);
}

/** Every finding of one rule, whatever its severity. */
export async function of(text: string, rule: string): Promise<Finding[]> {
    const mine = (await kit.findings(text)).filter((finding) => finding.rule === rule);
    if (looksAtVariants) await expectInVariants(kit, text, mine.length > 0 ? [rule] : []);
    return mine;
}

/** The one finding of a rule; the test fails when there is none, or several, or when a variant of its recipe goes without. */
export async function one(text: string, rule: string): Promise<Finding> {
    const found = await kit.findings(text);
    const mine = found.filter((finding) => finding.rule === rule);
    if (looksAtVariants) await expectInVariants(kit, text, [rule]);
    expect(mine, `${rule} among\n${found.map((finding) => `${finding.rule}: ${finding.message}`).join('\n')}`).toHaveLength(1);
    return mine[0]!;
}

/** What a rule says under the finding of its cause; the test fails when it says nothing there, or several things. */
export async function under(text: string, cause: string, rule: string): Promise<string> {
    const mine = (await one(text, cause)).related.filter((each) => each.rule === rule);
    expect(mine, `${rule} under ${cause}`).toHaveLength(1);
    return mine[0]!.message;
}

/** Asserts that the text has nothing that would keep a rule from being looked at, and that the rule is silent. */
export async function silent(text: string, rule: string): Promise<void> {
    const found = await kit.findings(text);
    const broken = found.filter((finding) =>
        ['syntax', 'unknown-name', 'missing-unit', 'wrong-unit', 'art-missing'].includes(finding.rule),
    );
    expect(broken.map((finding) => finding.message)).toEqual([]);
    expect(found.filter((finding) => finding.rule === rule).map((finding) => finding.message)).toEqual([]);
}

/** The words of the text that a finding points at. */
export function words(text: string, { where }: Finding): string {
    return text.slice(where.offset, where.offset + where.length);
}

/** The text after a finding's fix has been taken. */
export function mended(text: string, finding: Finding, fix = 0): string {
    const taken = finding.fixes[fix];
    expect(taken, `a fix of ${finding.rule}`).toBeDefined();
    const edits = taken!.changes.flatMap((change) => editsOf(change, text));
    return edits
        .sort((a, b) => b.offset - a.offset || b.length - a.length)
        .reduce((now, { offset, length, text: put }) => now.slice(0, offset) + put + now.slice(offset + length), text);
}

/** Takes the fix and asserts that the rule has nothing more to say and that the text is still sound. */
export async function expectMended(text: string, finding: Finding, fix = 0): Promise<string> {
    const after = mended(text, finding, fix);
    await silent(after, finding.rule);
    return after;
}

/** A recipe of the test's own, with the shop in front of it. */
export function recipe(body: string, stock = ''): string {
    return `${shop}\n${stock}\nrecipe thing "Thing" {\n  revision 1\n  make 1\n  laser shed\n  art flag "flag.svg"\n  art diamond "diamond.svg"\n${body}\n}\n`;
}
