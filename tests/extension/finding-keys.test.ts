import { expect, test } from 'vitest';
import { findingKeys } from '../../extension/bench/webview/notes/finding-keys';

const keys = (...rules: string[]) => findingKeys(rules.map((rule) => ({ rule })));

test('each finding has a key of its own, which those of other rules do not change', () => {
    const before = keys('off-blank', 'grit-jump', 'off-blank');
    expect(new Set(before).size).toBe(3);
    const after = keys('grit-jump', 'off-blank', 'thin-floor', 'off-blank');
    expect(after.filter((key) => before.includes(key)).sort()).toEqual([...before].sort());
});
