// @vitest-environment happy-dom
import { cleanup, render, screen, waitFor } from '@testing-library/preact';
import { afterEach, expect, test } from 'vitest';
import { AfterFirstFrame, beginFirstFrame } from '../../src/ui/first-frame.tsx';

afterEach(cleanup);

const page = (
  <>
    <p>read first</p>
    <AfterFirstFrame>
      <p>further down</p>
    </AfterFirstFrame>
  </>
);

test('on a cold start what stands further down comes in the frame after the first', async () => {
  beginFirstFrame();
  render(page);
  expect(screen.queryByText('read first')).not.toBeNull();
  expect(screen.queryByText('further down')).toBeNull();
  await waitFor(() => expect(screen.queryByText('further down')).not.toBeNull());
});

test('at any other time all of a page is there at once', () => {
  render(page);
  expect(screen.queryByText('further down')).not.toBeNull();
});
