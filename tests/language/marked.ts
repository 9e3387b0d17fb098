import { expect } from 'vitest';
import { textFindings } from '../../language/text-findings';
import type { Finding } from '../../shared/recipe/finding';
import { expectToKeepToItsPage } from '../kit/keeps-to-its-page';
import { open, services } from './services';

/** One expected finding: where its carets stand, its rule, and words its message must hold. */
export interface Mark {
    readonly offset: number;
    readonly length: number;
    readonly rule: string;
    readonly says: string;
}

const caretLine = /^(\s*)(\^+)\s+([a-z-]+)(?::\s*(.*))?$/;

/**
 * Takes the squiggles out of a text. Under a line stands a caret line for each finding on it:
 * carets under the place, then the rule, then `: ` and words of the message where they matter.
 */
export function unmark(marked: string): { text: string; marks: Mark[] } {
    const lines: string[] = [];
    const marks: Mark[] = [];
    let offset = 0;
    let lineStart = 0;
    for (const line of marked.split('\n')) {
        const found = caretLine.exec(line);
        if (found === null) {
            lineStart = offset;
            lines.push(line);
            offset += line.length + 1;
            continue;
        }
        const [, blanks = '', carets = '', rule = '', says = ''] = found;
        marks.push({ offset: lineStart + blanks.length, length: carets.length, rule, says });
    }
    return { text: lines.join('\n'), marks };
}

/** Puts squiggles into a text, for a failing test to be read. */
export function mark(text: string, findings: readonly Finding[]): string {
    const out: string[] = [];
    let offset = 0;
    for (const line of text.split('\n')) {
        out.push(line);
        for (const { where, rule, message } of findings) {
            if (where.offset < offset || where.offset > offset + line.length) continue;
            out.push(`${' '.repeat(where.offset - offset)}${'^'.repeat(Math.max(1, where.length))} ${rule}: ${message}`);
        }
        offset += line.length + 1;
    }
    return out.join('\n');
}

/** Checks that a text has exactly the findings that are marked in it: no other, and at no other place. */
export async function expectMarked(marked: string, uri?: string): Promise<readonly Finding[]> {
    const { text, marks } = unmark(marked);
    const findings = textFindings(await open(text, uri), services);
    for (const finding of findings) expectToKeepToItsPage(finding);
    expectFindings(text, marks, findings);
    return findings;
}

/** Checks that these findings are the marked ones, whoever found them. */
export function expectFindings(text: string, marks: readonly Mark[], findings: readonly Finding[]): void {
    const shown = `\n${mark(text, findings)}\n`;
    const place = ({ offset, length, rule }: { offset: number; length: number; rule: string }) => `${offset}+${length} ${rule}`;
    const actual = findings.map(({ where, rule }) => place({ offset: where.offset, length: Math.max(1, where.length), rule }));
    expect(actual.sort(), shown).toEqual(marks.map(place).sort());
    for (const { offset, rule, says } of marks) {
        const said = findings.filter((finding) => finding.where.offset === offset && finding.rule === rule);
        expect(
            said.some(({ message }) => message.includes(says)),
            `says "${says}":${shown}`,
        ).toBe(true);
    }
}
