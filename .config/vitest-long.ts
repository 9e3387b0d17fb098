/** Only the tests that the ordinary ones leave out: simulations, every slip and every place, the memory of a day (`npm run long`). */
process.env.KERFBOOK_TESTS = 'long';
export default (await import('./vitest')).default;
