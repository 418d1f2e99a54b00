import { expect, test } from 'vitest';
import { askToPersist, storageState } from '../../src/store/self-test.ts';

const estimate = async () => ({ usage: 1000, quota: 5000 });
const storage = (persisted: boolean) => ({ persisted: async () => persisted, estimate });

test('says plainly what the browser has agreed to, and never that it is safe', async () => {
  expect(await storageState(storage(true))).toEqual({
    persisted: true,
    usedBytes: 1000,
    quotaBytes: 5000,
    text: 'The browser has agreed to keep this job until you delete it. Keep a backup file off this phone.',
  });
  expect((await storageState(storage(false))).text).toBe(
    'The browser may delete this job when space runs short or after some weeks without use. Keep a backup file off this phone.',
  );
});

test('a browser that says nothing is not taken for a promise', async () => {
  expect(await storageState({})).toEqual({
    persisted: null,
    usedBytes: null,
    quotaBytes: null,
    text: 'This browser does not say whether it will keep this job. Keep a backup file off this phone.',
  });
});

test('asking gives back what was granted', async () => {
  let granted = false;
  const browser = {
    persisted: async () => granted,
    persist: async () => {
      granted = true;
      return true;
    },
  };
  expect((await storageState(browser)).persisted).toBe(false);
  expect((await askToPersist(browser)).persisted).toBe(true);
});
