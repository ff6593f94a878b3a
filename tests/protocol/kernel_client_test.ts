import { deepEqual, equal, rejects } from "node:assert/strict";
import { createConnection } from "sagbook/protocol/connection.ts";
import { KernelClient } from "sagbook/protocol/kernel_client.ts";
import { createMessage, type Message } from "sagbook/protocol/message.ts";
import { MessageCodec } from "sagbook/protocol/message_codec.ts";
import { Publisher } from "sagbook/protocol/publisher.ts";
import { Router } from "sagbook/protocol/router.ts";

/** The sockets of a kernel in this process, which answers as it is told. */
async function pretendKernel() {
  const connection = createConnection();
  const { endpoints, key } = connection;
  const sockets = {
    shell: new Router(endpoints.shell),
    control: new Router(endpoints.control),
    stdin: new Router(endpoints.stdin),
    iopub: new Publisher(endpoints.iopub),
  };
  const client = await KernelClient.connect(connection);
  await sockets.iopub.subscribed();
  return {
    sockets,
    client,
    codec: new MessageCodec(key),
    async close() {
      client.close();
      for (const socket of Object.values(sockets)) await socket.close();
    },
  };
}

const answer = (parent: Message, content: Record<string, unknown>) =>
  createMessage({
    type: "reply",
    session: "kernel",
    content,
    parent: parent.header,
  });

Deno.test("KernelClient.request() gives each request its own reply, in whatever order", async () => {
  const kernel = await pretendKernel();
  const replies = ["a", "b", "c"].map((word) =>
    kernel.client.request("shell", "echo", { word })
  );
  const asked = [];
  for (let i = 0; i < 3; i++) {
    const { identity, frames } =
      (await kernel.sockets.shell.inbox.take()).value;
    asked.unshift({ identity, message: kernel.codec.decode(frames) });
  }
  for (const { identity, message } of asked) {
    const reply = answer(message, message.content);
    kernel.sockets.shell.send(identity, kernel.codec.encode(reply));
  }
  const words = (await Promise.all(replies)).map(({ content }) => content.word);
  deepEqual(words, ["a", "b", "c"]);
  await kernel.close();
});

Deno.test("KernelClient() ignores and counts forged, repeated and broken messages", async () => {
  const kernel = await pretendKernel();
  const { shell } = kernel.sockets;
  const reply = kernel.client.request("shell", "ask", {});
  const { identity, frames } = (await shell.inbox.take()).value;
  const asked = kernel.codec.decode(frames);
  const forged = new MessageCodec("wrong key").encode(answer(asked, { n: 0 }));
  const unrelated = kernel.codec.encode(
    createMessage({ type: "x", session: "s", content: {} }),
  );
  await shell.send(identity, forged);
  await shell.send(identity, unrelated);
  await shell.send(identity, unrelated);
  await shell.send(identity, [new Uint8Array(3)]);
  await shell.send(identity, kernel.codec.encode(answer(asked, { n: 1 })));
  equal((await reply).content.n, 1);
  equal(kernel.client.rejected, 3);
  await kernel.close();
});

Deno.test("KernelClient.answer() sends input under the question's header", async () => {
  const kernel = await pretendKernel();
  const { shell, stdin } = kernel.sockets;
  kernel.client.inputListeners.add((question) => {
    kernel.client.answer(question, `${question.content.prompt} 150 mm`);
  });
  const reply = kernel.client.request("shell", "ask", {});
  const { identity } = (await shell.inbox.take()).value;
  const question = createMessage({
    type: "input_request",
    session: "k",
    content: { prompt: "ring?", password: false },
  });
  equal(await stdin.send(identity, kernel.codec.encode(question)), true);
  const { frames } = (await stdin.inbox.take()).value;
  const { content, parent } = kernel.codec.decode(frames);
  equal(content.value, "ring? 150 mm");
  equal(parent.msg_id, question.header.msg_id);
  kernel.client.close();
  await rejects(reply, {
    message: "the connection to the kernel was closed",
  });
  await kernel.close();
});

Deno.test("KernelClient.request() fails when the kernel closes its sockets, and from then on", async () => {
  const kernel = await pretendKernel();
  const reply = kernel.client.request("control", "ask", {});
  await kernel.sockets.control.inbox.take();
  await kernel.sockets.control.close();
  const error = { message: "the kernel closed its sockets" };
  await rejects(reply, error);
  await rejects(kernel.client.request("shell", "ask", {}), error);
  await kernel.close();
});
