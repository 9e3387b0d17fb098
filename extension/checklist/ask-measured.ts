import * as vscode from 'vscode';
import type { DepthReading } from '../../shared/view/coupon-protocol';
import type { ChecklistItem, Measure } from '../../shared/view/protocol';
import { requests } from '../../shared/view/requests';
import type { RecipeServer } from '../server';
import type { Measured } from './ticks';

/** Asks for what a check wants measured. Nothing typed leaves it out; undefined if the asking was broken off. */
export async function askMeasured(server: RecipeServer, item: ChecklistItem): Promise<Measured[] | undefined> {
    const measured: Measured[] = [];
    for (const measure of item.measures ?? []) {
        const typed = await vscode.window.showInputBox({
            title: `${item.label}: ${measure.what} of ${measure.step}`,
            prompt: `It should be ${measure.wish}. What did you measure? Empty leaves it out.`,
            placeHolder: measure.what === 'depth' ? '0.52 mm' : '12.1 mm',
            ignoreFocusOut: true,
            validateInput: async (text) => remark(await read(server, text), measure),
        });
        if (typed === undefined) return undefined;
        const reading = await read(server, typed);
        if (reading !== undefined && 'depth' in reading && reading.value !== undefined)
            measured.push({ step: measure.step, words: `${measure.what} ${reading.depth}` });
    }
    return measured;
}

async function read(server: RecipeServer, text: string): Promise<DepthReading | undefined> {
    return text.trim() === '' ? undefined : server.ask(requests.readDepth, { text });
}

/** What cannot be read is refused; what lies outside of what was wished for is said, and may be written down. */
function remark(reading: DepthReading | undefined, { low, high, wish }: Measure): vscode.InputBoxValidationMessage | undefined {
    if (reading === undefined) return undefined;
    if ('problem' in reading || reading.value === undefined)
        return { message: `A length, such as 0.52 mm or 1/64 in.`, severity: vscode.InputBoxValidationSeverity.Error };
    const rounding = 1e-9; // mm
    if (reading.value >= low - rounding && reading.value <= high + rounding) return undefined;
    const way = reading.value < low ? 'less' : 'more';
    return {
        message: `${reading.depth} is ${way} than it should be (${wish}).`,
        severity: vscode.InputBoxValidationSeverity.Warning,
    };
}
