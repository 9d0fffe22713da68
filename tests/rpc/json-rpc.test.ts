/** JSON-RPC 2.0 as its specification has it, over methods that are of no session. */
import { describe, expect, it } from 'vitest';
import { Unworkable } from '../../src/source/unworkable.ts';
import { answerLine, type Caller, CODES, fault } from '../../src/ui/rpc/json-rpc.ts';

const called: unknown[] = [];
const bugs: unknown[] = [];
const call: Caller = async (method, params) => {
  called.push([method, params]);
  if (method === 'broken') throw new Error('broken');
  if (method === 'unworkable') throw new Unworkable('it cannot be computed', 'look again');
  if (method === 'add') return { sum: Object.values(params).reduce((a, b) => a + b, 0) };
  return fault(CODES.method, `there is no method "${method}"`);
};
const answer = async (line: string) => {
  const text = await answerLine(line, call, (error) => bugs.push(error));
  return text === null ? null : JSON.parse(text);
};
const error = (code: number, id: unknown = null) => ({
  jsonrpc: '2.0',
  id,
  error: { code, message: expect.any(String) },
});

// The examples of section 7 of the specification of 2013-01-04, with parameters by name.
describe("the specification's examples", () => {
  it.each<[string, string, unknown]>([
    [
      'named parameters',
      '{"jsonrpc": "2.0", "method": "add", "params": {"a": 23, "b": 42}, "id": 3}',
      { jsonrpc: '2.0', result: { sum: 65 }, id: 3 },
    ],
    ['a notification', '{"jsonrpc": "2.0", "method": "add", "params": {"a": 1}}', null],
    [
      'a method that is not there',
      '{"jsonrpc": "2.0", "method": "foobar", "id": "1"}',
      error(-32601, '1'),
    ],
    ['a notification of one that is not there', '{"jsonrpc": "2.0", "method": "foobar"}', null],
    ['invalid JSON', '{"jsonrpc": "2.0", "method": "foobar, "params": "bar", "baz]', error(-32700)],
    ['an invalid request', '{"jsonrpc": "2.0", "method": 1, "params": "bar"}', error(-32600)],
    [
      'a batch of invalid JSON',
      '[{"jsonrpc": "2.0", "method": "sum", "params": [1,2,4], "id": "1"}, {"jsonrpc": "2.0", "method"]',
      error(-32700),
    ],
    ['an empty batch', '[]', error(-32600)],
    ['a batch of nothing valid, one', '[1]', [error(-32600)]],
    ['the same, three', '[1,2,3]', [error(-32600), error(-32600), error(-32600)]],
    [
      'a batch',
      `[${[
        '{"jsonrpc": "2.0", "method": "add", "params": {"a": 1, "b": 2}, "id": "1"}',
        '{"jsonrpc": "2.0", "method": "add", "params": {"a": 7}}',
        '{"foo": "boo"}',
        '{"jsonrpc": "2.0", "method": "foo.get", "params": {"name": "myself"}, "id": "5"}',
      ].join(',')}]`,
      [{ jsonrpc: '2.0', result: { sum: 3 }, id: '1' }, error(-32600), error(-32601, '5')],
    ],
    [
      'a batch of notifications',
      '[{"jsonrpc": "2.0", "method": "add", "params": {"a": 1}}, {"jsonrpc": "2.0", "method": "add"}]',
      null,
    ],
  ])('%s', async (_, line, wanted) => {
    expect(await answer(line)).toEqual(wanted);
  });
});

describe('ids', () => {
  it.each(['"a"', '""', '0', '-7', '1.5', 'null', '9007199254740991'])(
    '%s comes back as it was sent',
    async (id) => {
      const text = await answerLine(`{"jsonrpc":"2.0","method":"add","id":${id}}`, call, () => {});
      expect(text).toBe(`{"jsonrpc":"2.0","id":${id},"result":{"sum":0}}`);
    },
  );

  // Read as a double they would come back changed, or as null.
  it.each(['9007199254740993', '1e999', 'true', '[1]', '{}'])(
    '%s is refused, since it would not come back',
    async (id) => {
      called.length = 0;
      expect(await answer(`{"jsonrpc":"2.0","method":"add","id":${id}}`)).toEqual(error(-32600));
      expect(called).toEqual([]);
    },
  );

  it('of a request that is none comes back where it can be made out', async () => {
    expect(await answer('{"jsonrpc":"1.0","method":"add","id":4}')).toEqual(error(-32600, 4));
    expect(await answer('{"method":"add","id":"x"}')).toEqual(error(-32600, 'x'));
  });
});

describe('parameters', () => {
  it('go by name; a list has to be empty', async () => {
    const listed = (list: string) =>
      answer(`{"jsonrpc":"2.0","id":1,"method":"add","params":${list}}`);
    expect(await listed('[]')).toMatchObject({ result: { sum: 0 } });
    expect(await listed('[1]')).toMatchObject({ error: { code: -32602 } });
    expect(await listed('null')).toEqual(error(-32600, 1));
  });
});

it('half a sign in a parameter is told, and no call is made with it', async () => {
  called.length = 0;
  bugs.length = 0;
  // What JSON can write and no file can hold; a backslash before the letters is another matter.
  const half = String.raw`{"jsonrpc":"2.0","id":1,"method":"add","params":{"a":"\\ud800","b":[{"c":"x\ud800"}]}}`;
  expect(await answer(half)).toEqual({
    ...error(-32602, 1),
    error: {
      ...error(-32602).error,
      data: { issues: [expect.objectContaining({ at: '/params/b', code: 'half-sign' })] },
    },
  });
  const key = String.raw`{"jsonrpc":"2.0","id":2,"method":"add","params":{"\udc00":1}}`;
  expect(await answer(key)).toEqual(expect.objectContaining({ id: 2, error: expect.anything() }));
  expect(called).toEqual([]);
  const deep = `${'['.repeat(150_000)}"\\ud800"${']'.repeat(150_000)}`;
  const nested = await answer(`{"jsonrpc":"2.0","id":3,"method":"foobar","params":{"a":${deep}}}`);
  expect(nested).toEqual(expect.objectContaining({ id: 3, error: expect.anything() }));
  expect(nested.error.data.issues).toMatchObject([{ at: '/params/a', code: 'half-sign' }]);
  expect(bugs).toEqual([]);
});

it.each([
  ['a parameter', '{"jsonrpc":"2.0","method":"add","params":{"a":1,"\\u0061" :2},"id":1}'],
  ['the method', '{"jsonrpc":"2.0","method":"add","method":"foobar","id":1}'],
  ['the id, in a batch', '[{"jsonrpc":"2.0","method":"add","id":1,"id":2}]'],
])('%s twice is told, and no call is made', async (_, line) => {
  called.length = 0;
  const told = await answer(line);
  expect(told).toEqual(error(CODES.request));
  expect(told.error.message).toContain('stands twice');
  expect(called).toEqual([]);
});

it('the same name in two groups, and in a text, is no name twice', async () => {
  const line =
    '{"jsonrpc":"2.0","method":"add","params":{"a":1,"b":{"a":1},"c":"{\\"a\\":1,\\"a\\":1}","d":[{"a":1},{"a":1}]},"id":1}';
  expect((await answer(line)).id).toBe(1);
});

it('calls of a batch are made one after the other, and no more than a hundred', async () => {
  called.length = 0;
  const message = '{"jsonrpc":"2.0","method":"add","params":{"a":1}}';
  await answer(`[${Array(100).fill(message).join(',')}]`);
  expect(called).toHaveLength(100);
  expect(await answer(`[${Array(101).fill(message).join(',')}]`)).toEqual(error(-32600));
  expect(called).toHaveLength(100);
});

it('a fault of the program is told aside and answered as one', async () => {
  expect(await answer('{"jsonrpc":"2.0","id":1,"method":"broken"}')).toEqual(error(-32603, 1));
  expect(bugs).toHaveLength(1);
  expect(await answer('{"jsonrpc":"2.0","method":"broken"}')).toBeNull();
  expect(bugs).toHaveLength(2);
});

it('what was given and cannot be worked with is refused, and is no fault of the program', async () => {
  bugs.length = 0;
  expect(await answer('{"jsonrpc":"2.0","id":1,"method":"unworkable"}')).toEqual({
    jsonrpc: '2.0',
    id: 1,
    error: {
      code: -32000,
      message: 'it cannot be computed',
      data: { code: 'cannot-be-computed', words: 'it cannot be computed', fix: 'look again' },
    },
  });
  expect(bugs).toEqual([]);
});

it('an answer is one line whatever is in it, and no terminal obeys it', async () => {
  const hidden = '\u2028\u0085\u009b31m\u202e\n';
  const text = await answerLine(
    JSON.stringify({ jsonrpc: '2.0', id: hidden, method: 'add' }),
    call,
    () => {},
  );
  expect(text).not.toMatch(/[^ -~]/);
  expect(JSON.parse(text!).id).toBe(hidden);
});
