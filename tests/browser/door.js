// What tests/tools/door.cpp is for a machine's own program, for the browser's: a request on each line of the input, an
// answer and a zero for each on the output.
//
// usage: node door.js .build/browser/slabwright.js
"use strict";
const path = require("path");
const readline = require("readline");

const load = require(path.resolve(process.argv[2]));

// The request goes onto the heap: a design's weather would not fit on the stack.
function answer(core, request) {
  const bytes = core.lengthBytesUTF8(request) + 1;
  const at = core._malloc(bytes);
  core.stringToUTF8(request, at, bytes);
  const text = core.UTF8ToString(core._slabwright_answer(at));
  core._free(at);
  return text;
}

(async () => {
  const core = await load();
  for await (const request of readline.createInterface({input: process.stdin}))
    process.stdout.write(answer(core, request) + "\0");
})();
