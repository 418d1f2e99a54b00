import { expect, test } from 'vitest';
import { staticHtml } from '../../../../src/screens/stake/sheet/static-html.ts';

function Line({ words, bold }: { readonly words: string; readonly bold?: boolean }) {
  return <p class={bold ? 'bold' : undefined}>{words}</p>;
}

test('components, lists, numbers and nothing', () => {
  const html = staticHtml(
    <>
      <Line words="one" bold />
      {[1, 2].map((n) => (
        <Line key={n} words={`line ${n}`} />
      ))}
      {null}
      {false}
      {7}
    </>,
  );
  expect(html).toBe('<p class="bold">one</p><p>line 1</p><p>line 2</p>7');
});

test('texts and attributes cannot break out', () => {
  const evil = `"><script>alert('x')</script>&`;
  expect(staticHtml(<p title={evil}>{evil}</p>)).toBe(
    '<p title="&quot;&gt;&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;&amp;">&quot;&gt;&lt;script&gt;alert(&#39;x&#39;)&lt;/script&gt;&amp;</p>',
  );
});

test('attributes that are not there, and those that are only named', () => {
  expect(staticHtml(<input type="checkbox" checked disabled={false} />)).toBe(
    '<input type="checkbox" checked>',
  );
});

test('what needs a script is refused', () => {
  expect(() => staticHtml(<p onScroll={() => {}}>Go</p>)).toThrow(/cannot have onScroll/);
  expect(() => staticHtml(<p dangerouslySetInnerHTML={{ __html: '<b>' }} />)).toThrow(
    /cannot have dangerouslySetInnerHTML/,
  );
});
