import { afterAll } from 'vitest';

// Runs behind each file of tests. The language's services tell how, where they have been made at all (tests/language/services.ts).
afterAll(() => (globalThis as { forgetOpened?: () => Promise<void> }).forgetOpened?.());
