import { expect, it } from 'vitest';
import { editsOf } from '../../language/editing/text-edits';
import type { Finding } from '../../shared/recipe/finding';
import { memoryWorkshop } from '../kit/memory-workshop';
import { sampleText } from '../kit/samples';

/** Reads a sample in which nearly everything is wrong, takes one quick fix at a time, and looks again. */
it('each quick fix of the faulty tray takes its finding away and brings no fault of its own', { timeout: 300_000 }, async () => {
    const [text, art] = sampleText('heron-tray-faulty');
    const kit = await memoryWorkshop(art);
    const found = await kit.findings(text);
    const fixes = found.flatMap((finding) => finding.fixes.map((fix) => ({ finding, fix })));
    expect(fixes.length).toBeGreaterThan(25);
    const wrong: string[] = [];
    for (const { finding, fix } of fixes) {
        const after = fix.changes
            .flatMap((change) => editsOf(change, text))
            .sort((a, b) => b.offset - a.offset || b.length - a.length)
            .reduce((now, { offset, length, text: put }) => now.slice(0, offset) + put + now.slice(offset + length), text);
        const again = await kit.findings(after);
        if (count(again, finding) >= count(found, finding)) wrong.push(`${finding.rule}: “${fix.title}” does not mend it.`);
        for (const each of again.filter(({ rule }) => /syntax|duplicate|-unit|impossible/.test(rule))) {
            if (count(again, each) > count(found, each)) wrong.push(`${finding.rule}: “${fix.title}” brings ${each.rule}.`);
        }
    }
    expect(wrong).toEqual([]);
});

function count(findings: readonly Finding[], { rule, message }: Finding): number {
    return findings.filter((other) => other.rule === rule && other.message === message).length;
}
