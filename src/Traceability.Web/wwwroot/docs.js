// Sends a call from the page of the HTTP interface and shows the answer. Nothing else.
"use strict";

const token = document.querySelector("#token input")?.value ?? "";

function addressOf(form) {
  let path = form.dataset.path;
  const query = new URLSearchParams();
  for (const input of form.querySelectorAll("input[data-in]")) {
    if (input.dataset.in === "path") path = path.replace(`{${input.name}}`, encodeURIComponent(input.value));
    else if (input.dataset.in === "query" && input.value !== "") query.set(input.name, input.value);
  }
  return query.size > 0 ? `${path}?${query}` : path;
}

function requestOf(form) {
  const headers = { RequestVerificationToken: token, Accept: "application/json, text/csv;q=0.5" };
  for (const input of form.querySelectorAll("input[data-in=header]")) if (input.value !== "") headers[input.name] = input.value;
  const body = form.elements.body?.value ?? "";
  if (body !== "") headers["Content-Type"] = form.dataset.type;
  return { method: form.dataset.method, headers, body: body === "" ? undefined : body };
}

async function textOf(answer) {
  const type = answer.headers.get("Content-Type") ?? "";
  if (!/json|text|yaml/.test(type)) return `${type}, ${(await answer.blob()).size} bytes`;
  const text = await answer.text();
  try { return type.includes("json") ? JSON.stringify(JSON.parse(text), null, 2) : text; } catch { return text; }
}

async function send(event) {
  event.preventDefault();
  const form = event.currentTarget;
  const place = form.querySelector(".answer");
  const [line, body] = [document.createElement("p"), document.createElement("pre")];
  body.tabIndex = 0;
  try {
    const answer = await fetch(addressOf(form), requestOf(form));
    line.textContent = `${answer.status} ${answer.statusText}`;
    body.textContent = await textOf(answer);
  } catch (lost) {
    line.textContent = `No answer: ${lost.message}`;
  }
  place.replaceChildren(line, body);
}

for (const form of document.querySelectorAll("form.try")) form.addEventListener("submit", send);
