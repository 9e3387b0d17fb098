import { describe, expect, test, vi } from 'vitest';
import type { Ticks } from '../../extension/checklist/ticks';
import type { Checklist } from '../../shared/view/protocol';

vi.mock('vscode', async (original) => ({
    ...(await original<typeof import('../kit/vscode')>()),
    EventEmitter: class {
        event = () => ({ dispose: () => {} });
        fire() {}
    },
    ThemeColor: class {},
    ThemeIcon: class {},
    TreeItem: class {
        constructor(
            readonly label: string,
            readonly collapsibleState?: number,
        ) {}
    },
    TreeItemCheckboxState: { Unchecked: 0, Checked: 1 },
    TreeItemCollapsibleState: { None: 0, Collapsed: 1 },
}));
const { ChecklistTree } = await import('../../extension/checklist/tree');

const where = { uri: 'file:///w/tray.kerf', line: 0, column: 0 };
const step = (id: string, label: string) => ({ id, label, detail: 'detail', tooltip: '', where });
const checklist = {
    recipe: 'tray',
    title: 'Tray',
    cautions: ['Wear glasses.'],
    items: [step('engrave-pocket', 'Engrave pocket'), step('sand-tray', 'Sand tray')],
} as unknown as Checklist;

/** The boxes of the steps, as a screen reader and the pointer have them. */
function boxes(ticks: Ticks) {
    const tree = new ChecklistTree();
    tree.show('job', checklist, ticks);
    const items = tree.getChildren().map((node) => tree.getTreeItem(node));
    return items.map(({ checkboxState }) => checkboxState as Exclude<typeof checkboxState, number>).filter((box) => !!box);
}

describe('the check boxes of the checklist', () => {
    test('each step has one, named after it', () => {
        expect(boxes({}).map((box) => box.accessibilityInformation)).toEqual([
            { label: 'Done: Engrave pocket', role: 'checkbox' },
            { label: 'Done: Sand tray', role: 'checkbox' },
        ]);
    });

    test('a step of several passes has a menu of its own', () => {
        const tree = new ChecklistTree();
        const measureAfter = { where, passes: 3, unit: 'mm' };
        const items = [{ ...step('engrave-pocket', 'Engrave pocket'), measureAfter }, step('sand-tray', 'Sand tray')];
        tree.show('job', { ...checklist, items } as unknown as Checklist, {});
        const steps = tree.getChildren().filter(({ kind }) => kind === 'step');
        expect(steps.map((node) => tree.getTreeItem(node).contextValue)).toEqual(['step-passes', 'step']);
    });

    test('the state is the box’s own, and the tooltip says since when', () => {
        const [done, open] = boxes({ 'engrave-pocket': { label: 'Engrave pocket', at: Date.UTC(2026, 10, 26) } });
        expect(done).toMatchObject({ state: 1, tooltip: expect.stringMatching(/^Done .*2026/) });
        expect(open).toMatchObject({ state: 0, tooltip: 'Not done yet' });
        expect(done?.accessibilityInformation).toEqual(boxes({})[0]?.accessibilityInformation);
    });
});
