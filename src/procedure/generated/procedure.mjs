// Made from docs/schema/procedure.schema.json by scripts/schemas.mjs. Change the schema, not this file.
var __getOwnPropNames = Object.getOwnPropertyNames;
var __commonJS = (cb, mod) => function __require() {
  try {
    return mod || (0, cb[__getOwnPropNames(cb)[0]])((mod = { exports: {} }).exports, mod), mod.exports;
  } catch (e) {
    throw mod = 0, e;
  }
};

// node_modules/ajv/dist/runtime/ucs2length.js
var require_ucs2length = __commonJS({
  "node_modules/ajv/dist/runtime/ucs2length.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    function ucs2length(str) {
      const len = str.length;
      let length = 0;
      let pos = 0;
      let value;
      while (pos < len) {
        length++;
        value = str.charCodeAt(pos++);
        if (value >= 55296 && value <= 56319 && pos < len) {
          value = str.charCodeAt(pos);
          if ((value & 64512) === 56320)
            pos++;
        }
      }
      return length;
    }
    exports.default = ucs2length;
    ucs2length.code = 'require("ajv/dist/runtime/ucs2length").default';
  }
});

// node_modules/fast-deep-equal/index.js
var require_fast_deep_equal = __commonJS({
  "node_modules/fast-deep-equal/index.js"(exports, module) {
    "use strict";
    module.exports = function equal(a, b) {
      if (a === b) return true;
      if (a && b && typeof a == "object" && typeof b == "object") {
        if (a.constructor !== b.constructor) return false;
        var length, i, keys;
        if (Array.isArray(a)) {
          length = a.length;
          if (length != b.length) return false;
          for (i = length; i-- !== 0; )
            if (!equal(a[i], b[i])) return false;
          return true;
        }
        if (a.constructor === RegExp) return a.source === b.source && a.flags === b.flags;
        if (a.valueOf !== Object.prototype.valueOf) return a.valueOf() === b.valueOf();
        if (a.toString !== Object.prototype.toString) return a.toString() === b.toString();
        keys = Object.keys(a);
        length = keys.length;
        if (length !== Object.keys(b).length) return false;
        for (i = length; i-- !== 0; )
          if (!Object.prototype.hasOwnProperty.call(b, keys[i])) return false;
        for (i = length; i-- !== 0; ) {
          var key = keys[i];
          if (!equal(a[key], b[key])) return false;
        }
        return true;
      }
      return a !== a && b !== b;
    };
  }
});

// node_modules/ajv/dist/runtime/equal.js
var require_equal = __commonJS({
  "node_modules/ajv/dist/runtime/equal.js"(exports) {
    "use strict";
    Object.defineProperty(exports, "__esModule", { value: true });
    var equal = require_fast_deep_equal();
    equal.code = 'require("ajv/dist/runtime/equal").default';
    exports.default = equal;
  }
});

// <stdin>
var validate = validate10;
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "procedure.schema.json", "title": "Procedure", "description": "A decision tree of tests. Each step asks for one thing; its outcomes lead to other steps; a conclusion names the faults it covers.", "type": "object", "required": ["procedure", "title", "start", "steps"], "additionalProperties": false, "properties": { "procedure": { "title": "Name", "description": "Short name in small letters; the file is named after it.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$", "examples": ["hall-no-signal"] }, "title": { "title": "Title", "description": "What the person who chooses it reads.", "type": "string", "minLength": 3, "maxLength": 120, "examples": ["Three-wire Hall sensor, no signal"] }, "about": { "title": "About", "description": "What it is for, what to have ready, what it does not cover.", "type": "string", "maxLength": 2e3 }, "circuit": { "title": "Circuit", "description": "Name of the circuit file it is about.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$", "examples": ["hall-module-fed"] }, "codes": { "title": "Trouble codes", "description": "Codes it answers.", "type": "array", "maxItems": 60, "items": { "type": "string", "pattern": "^[PCBU][0-3][0-9A-F]{3}$", "examples": ["P0335"] } }, "needs": { "title": "Needs", "description": "Makes this a sub-procedure: names the caller fills in with 'with', each with a word on what it is. Inside, write $name in leads and {name} in texts.", "type": "object", "additionalProperties": { "type": "string", "minLength": 1, "maxLength": 200 }, "examples": [{ "feed": "terminal of the feed at the sensor" }] }, "start": { "title": "Start", "description": "The first step.", "$ref": "#/definitions/stepName" }, "steps": { "title": "Steps", "description": "The steps by name.", "type": "object", "minProperties": 1, "propertyNames": { "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "additionalProperties": { "$ref": "#/definitions/step" } } }, "definitions": { "stepName": { "type": "string", "pattern": "^[a-z$][a-z0-9-]{0,60}$", "examples": ["feed-low"] }, "text": { "type": "string", "minLength": 1, "maxLength": 2e3 }, "terminal": { "type": "string", "pattern": "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$", "examples": ["sensor.feed", "battery.negative"] }, "leads": { "description": "Red lead first, black lead second.", "type": "array", "minItems": 2, "maxItems": 2, "items": { "$ref": "#/definitions/terminal" }, "examples": [["sensor.feed", "battery.negative"]] }, "value": { "description": "A value with its unit.", "type": "string", "maxLength": 40, "examples": ["4.75 V", "0.5 ohm"] }, "family": { "description": "Kind of test.", "enum": ["reference", "ground", "signal", "injection", "bypass", "actuation", "continuity", "pattern", "neighbour", "wiggle", "comparison", "inspection", "interview"] }, "state": { "description": "State of the vehicle. Stays as it was in the step before only if you write it again. driving is a road test: it reads no instrument.", "enum": ["key-off", "key-on", "cranking", "running", "driving"] }, "look": { "enum": ["lit", "dim", "dark", "full", "weak", "uneven", "flat-high", "flat-middle", "flat-low", "follows", "still", "in-step", "shifted", "no-signal", "sound", "faulty"] }, "bridge": { "title": "Bridge", "description": "Something clipped between two terminals for this step.", "type": "object", "required": ["from", "to"], "additionalProperties": false, "properties": { "from": { "title": "From", "description": "Terminal of one end.", "$ref": "#/definitions/terminal" }, "to": { "title": "To", "description": "Terminal of the other end.", "$ref": "#/definitions/terminal" }, "through": { "title": "Through", "description": "lead (a plain wire), test-light (LED), lamp (filament) or a resistance.", "type": "string", "maxLength": 40, "examples": ["test-light", "1 kohm"] } } }, "measure": { "title": "Measure", "description": "What is read. One key: the instrument; its value: where the leads go.", "type": "object", "minProperties": 1, "maxProperties": 1, "additionalProperties": false, "properties": { "volts": { "title": "Volts", "description": "A meter on volts: red lead, black lead.", "$ref": "#/definitions/leads" }, "ohms": { "title": "Ohms", "description": "A meter on ohms, on a dead circuit: one lead, the other lead.", "$ref": "#/definitions/leads" }, "amps": { "title": "Milliamperes", "description": "A meter on milliamperes in series, where a wire is opened at its connector: one side, the other side.", "$ref": "#/definitions/leads", "examples": [["sensor.feed", "sensor.feed.pin"]] }, "light": { "title": "LED light", "description": "An LED test light: its positive end, its negative end. It shows lit, dim or dark.", "$ref": "#/definitions/leads" }, "lamp": { "title": "Filament lamp", "description": "A filament test lamp, on battery feeds and grounds only: one end, the other end. It shows lit, dim or dark.", "$ref": "#/definitions/leads" }, "pattern": { "title": "Pattern", "description": "A scope while the target moves: its tip, its ground.", "$ref": "#/definitions/leads" }, "timing": { "title": "Position", "description": "A scope, compared with a known-good or sister signal: its tip, its ground. It shows in-step, shifted or no-signal.", "$ref": "#/definitions/leads" }, "counts": { "title": "Live data", "description": "The module's own live data at this input: does it follow?", "$ref": "#/definitions/terminal" }, "inspect": { "title": "Eyes and fingers", "description": "A part, a connector, a wire, the target.", "type": "string", "pattern": "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9.-]{0,80})$", "examples": ["connector.sensor", "target"] }, "reading": { "title": "Another number", "description": "A number that the circuit model knows nothing of.", "type": "object", "required": ["unit"], "additionalProperties": false, "properties": { "unit": { "title": "Unit", "description": "Unit of the number.", "enum": ["V", "ohm", "A", "Hz", "rpm", "%", "s", "deg"] }, "level": { "title": "Level", "description": "Of a signal in V or A: which of its levels a saved capture gives as the number. swing is peak to peak, ac the root mean square without the mean, as a meter on AC shows it.", "enum": ["low", "high", "mean", "swing", "ac"] }, "low": { "title": "Low end", "description": "Least value of a good circuit.", "$ref": "#/definitions/value" }, "high": { "title": "High end", "description": "Greatest value of a good circuit.", "$ref": "#/definitions/value" } } } } }, "outcome": { "title": "Outcome", "description": "Where a result leads. A number has from/to or below/above (the lower end counts, the upper does not); a look has look or looks; a question has words, and may say which trouble codes answer it, and which faults can.", "type": "object", "required": ["go"], "additionalProperties": false, "dependencies": { "only-with": ["because"], "never-with": ["because"] }, "properties": { "from": { "title": "From", "description": "Lower limit; it belongs to this outcome.", "$ref": "#/definitions/value" }, "to": { "title": "To", "description": "Upper limit; it belongs to the next outcome.", "$ref": "#/definitions/value" }, "below": { "title": "Below", "description": "Everything less than this.", "$ref": "#/definitions/value" }, "above": { "title": "Above", "description": "This and everything greater.", "$ref": "#/definitions/value" }, "look": { "title": "Look", "description": "What is seen. The name of the outcome will do when it is the look itself.", "$ref": "#/definitions/look" }, "looks": { "title": "Looks", "description": "Several looks that lead to the same step.", "type": "array", "minItems": 1, "items": { "$ref": "#/definitions/look" } }, "words": { "title": "In words", "description": "What it means, in a few words.", "$ref": "#/definitions/text" }, "code-kinds": { "title": "Kinds of code", "description": "Of a question: what a trouble code on the job sheet must say for this answer to be marked, and to be what a simulated vehicle answers.", "type": "array", "minItems": 1, "uniqueItems": true, "items": { "enum": ["circuit", "range", "low", "high", "intermittent", "correlation"] } }, "only-with": { "title": "Only with", "description": "Of a question, or of a number that the circuit does not compute: the faults that can give this answer. Any fault can when it is left out, and a healthy circuit.", "$ref": "#/definitions/faultPatterns" }, "never-with": { "title": "Never with", "description": "Of a question, or of a number that the circuit does not compute: the faults that cannot give this answer, healthy for a circuit without one.", "$ref": "#/definitions/faultPatterns" }, "because": { "title": "Because", "description": "Why only these faults give this answer, or why these never do.", "$ref": "#/definitions/text" }, "go": { "title": "Go", "description": "Step or conclusion that follows.", "$ref": "#/definitions/stepName" } } }, "faultPatterns": { "type": "array", "uniqueItems": true, "minItems": 1, "maxItems": 40, "items": { "type": "string", "pattern": "^[a-z*$][a-z0-9.*$-]{0,80}$" }, "examples": [["wire.*"]] }, "step": { "title": "Step", "type": "object", "additionalProperties": false, "dependencies": { "requires": ["otherwise"], "otherwise": ["requires"] }, "properties": { "title": { "title": "Title", "description": "A few words that name the step in lists.", "type": "string", "minLength": 1, "maxLength": 80 }, "test": { "title": "Test family", "description": "Kind of test, in the words of the trade.", "$ref": "#/definitions/family" }, "state": { "title": "Vehicle state", "description": "State of the vehicle in this step; key-off when left out.", "$ref": "#/definitions/state" }, "unplug": { "title": "Unplugged", "description": "Parts whose connector is off during this step.", "type": "array", "uniqueItems": true, "maxItems": 12, "items": { "type": "string", "pattern": "^\\$?[a-z][a-z0-9-]{0,60}$" }, "examples": [["sensor"]] }, "bridge": { "title": "Bridges", "description": "What is clipped between two terminals in this step, one or a list.", "oneOf": [{ "$ref": "#/definitions/bridge" }, { "type": "array", "maxItems": 4, "items": { "$ref": "#/definitions/bridge" } }] }, "spare": { "title": "Spare sensor", "description": "A known good sensor is plugged in instead of the vehicle's own.", "type": "boolean" }, "moving": { "title": "Target moving", "description": "The target passes the sensor in this step. Always so while cranking or running.", "type": "boolean" }, "wiggle": { "title": "Harness moved", "description": "Connectors and harness are moved for this reading too: what then fails counts, and a fault that comes and goes is likely to show. While cranking or running they are moved between two tries, never meanwhile.", "type": "boolean" }, "say": { "title": "What to do", "description": "What only a person knows, in the order it is done: connectors, bridges, key and leads are said from the setup, before it. {sensor.feed} becomes the pin and colour of the job.", "$ref": "#/definitions/text" }, "why": { "title": "Why", "description": "What the result tells, in one sentence.", "$ref": "#/definitions/text" }, "minutes": { "title": "Minutes", "description": "Of a practised person, all handling included.", "type": "number", "minimum": 0, "maximum": 240 }, "cautions": { "title": "Cautions", "description": "Names from cautions.yaml beyond those that the vehicle state and the instrument add by themselves. With use they come before each step inside, with conclude they are said with the repair.", "type": "array", "uniqueItems": true, "items": { "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" } }, "measure": { "title": "Measure", "description": "What is read, and where.", "$ref": "#/definitions/measure" }, "watch": { "title": "Watch", "description": "Of a question: what an instrument shows meanwhile, one after the other where it is a list. A question that brings on a fault is checked against it: each fault that an answer names must show here, in this state.", "oneOf": [{ "$ref": "#/definitions/measure" }, { "type": "array", "minItems": 1, "maxItems": 4, "items": { "$ref": "#/definitions/measure" } }] }, "expect": { "title": "Expect", "description": "'computed': the outcomes good, low and high get their limits from the circuit. Or a range of a good circuit, such as 4.75 V .. 5.25 V.", "type": "string", "maxLength": 80, "examples": ["computed", "4.75 V .. 5.25 V"] }, "outcomes": { "title": "Outcomes", "description": "What can come out, by name, and where each leads. The names good, low and high take computed limits.", "type": "object", "minProperties": 1, "maxProperties": 12, "propertyNames": { "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "additionalProperties": { "$ref": "#/definitions/outcome" } }, "usual": { "title": "Usual answer", "description": "For a question: the outcome a simulated vehicle answers when no code of the job sheet does.", "type": "string" }, "cannot": { "title": "Cannot do this", "description": "Where to go when this step can't be done here.", "$ref": "#/definitions/stepName" }, "go": { "title": "Go", "description": "Next step after something that is only done.", "$ref": "#/definitions/stepName" }, "use": { "title": "Use", "description": "Name of a sub-procedure.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "with": { "title": "With", "description": "What the sub-procedure needs.", "type": "object", "additionalProperties": { "type": "string", "maxLength": 200 } }, "results": { "title": "Results", "description": "Where each result of the sub-procedure leads.", "type": "object", "additionalProperties": { "$ref": "#/definitions/stepName" } }, "result": { "title": "Result", "description": "Ends a sub-procedure with this result.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "conclude": { "title": "Concludes", "description": 'Faults this conclusion covers; an empty list means that no fault was found, "*" alone that nothing was told.', "type": "array", "uniqueItems": true, "maxItems": 80, "items": { "type": "string", "pattern": "^[a-z*][a-z0-9.*-]{0,80}$" }, "examples": [["wire.signal.open"]] }, "repair": { "title": "Repair", "description": "What puts it right.", "$ref": "#/definitions/text" }, "customer": { "title": "For the customer", "description": "What is wrong and how it is known, in plain words.", "$ref": "#/definitions/text" }, "requires": { "title": "Requires", "description": "Of a conclusion: the steps it needs; a step that uses a sub-procedure means all steps in it. If one of them could not be done, the path ends at 'otherwise'.", "type": "array", "uniqueItems": true, "minItems": 1, "maxItems": 60, "items": { "type": "string", "pattern": "^[a-z][a-z0-9/-]{0,120}$" } }, "otherwise": { "title": "Otherwise", "description": "The conclusion that takes its place if a step of 'requires' could not be done.", "$ref": "#/definitions/stepName" }, "retest": { "title": "Retest", "description": "Steps that must pass after the repair.", "type": "array", "uniqueItems": true, "items": { "type": "string", "pattern": "^[a-z][a-z0-9/-]{0,120}$" } } } } } };
var schema12 = { "type": "string", "pattern": "^[a-z$][a-z0-9-]{0,60}$", "examples": ["feed-low"] };
var pattern0 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var pattern2 = new RegExp("^[PCBU][0-3][0-9A-F]{3}$", "u");
var pattern3 = new RegExp("^[a-z$][a-z0-9-]{0,60}$", "u");
var func2 = require_ucs2length().default;
var schema13 = { "title": "Step", "type": "object", "additionalProperties": false, "dependencies": { "requires": ["otherwise"], "otherwise": ["requires"] }, "properties": { "title": { "title": "Title", "description": "A few words that name the step in lists.", "type": "string", "minLength": 1, "maxLength": 80 }, "test": { "title": "Test family", "description": "Kind of test, in the words of the trade.", "$ref": "#/definitions/family" }, "state": { "title": "Vehicle state", "description": "State of the vehicle in this step; key-off when left out.", "$ref": "#/definitions/state" }, "unplug": { "title": "Unplugged", "description": "Parts whose connector is off during this step.", "type": "array", "uniqueItems": true, "maxItems": 12, "items": { "type": "string", "pattern": "^\\$?[a-z][a-z0-9-]{0,60}$" }, "examples": [["sensor"]] }, "bridge": { "title": "Bridges", "description": "What is clipped between two terminals in this step, one or a list.", "oneOf": [{ "$ref": "#/definitions/bridge" }, { "type": "array", "maxItems": 4, "items": { "$ref": "#/definitions/bridge" } }] }, "spare": { "title": "Spare sensor", "description": "A known good sensor is plugged in instead of the vehicle's own.", "type": "boolean" }, "moving": { "title": "Target moving", "description": "The target passes the sensor in this step. Always so while cranking or running.", "type": "boolean" }, "wiggle": { "title": "Harness moved", "description": "Connectors and harness are moved for this reading too: what then fails counts, and a fault that comes and goes is likely to show. While cranking or running they are moved between two tries, never meanwhile.", "type": "boolean" }, "say": { "title": "What to do", "description": "What only a person knows, in the order it is done: connectors, bridges, key and leads are said from the setup, before it. {sensor.feed} becomes the pin and colour of the job.", "$ref": "#/definitions/text" }, "why": { "title": "Why", "description": "What the result tells, in one sentence.", "$ref": "#/definitions/text" }, "minutes": { "title": "Minutes", "description": "Of a practised person, all handling included.", "type": "number", "minimum": 0, "maximum": 240 }, "cautions": { "title": "Cautions", "description": "Names from cautions.yaml beyond those that the vehicle state and the instrument add by themselves. With use they come before each step inside, with conclude they are said with the repair.", "type": "array", "uniqueItems": true, "items": { "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" } }, "measure": { "title": "Measure", "description": "What is read, and where.", "$ref": "#/definitions/measure" }, "watch": { "title": "Watch", "description": "Of a question: what an instrument shows meanwhile, one after the other where it is a list. A question that brings on a fault is checked against it: each fault that an answer names must show here, in this state.", "oneOf": [{ "$ref": "#/definitions/measure" }, { "type": "array", "minItems": 1, "maxItems": 4, "items": { "$ref": "#/definitions/measure" } }] }, "expect": { "title": "Expect", "description": "'computed': the outcomes good, low and high get their limits from the circuit. Or a range of a good circuit, such as 4.75 V .. 5.25 V.", "type": "string", "maxLength": 80, "examples": ["computed", "4.75 V .. 5.25 V"] }, "outcomes": { "title": "Outcomes", "description": "What can come out, by name, and where each leads. The names good, low and high take computed limits.", "type": "object", "minProperties": 1, "maxProperties": 12, "propertyNames": { "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "additionalProperties": { "$ref": "#/definitions/outcome" } }, "usual": { "title": "Usual answer", "description": "For a question: the outcome a simulated vehicle answers when no code of the job sheet does.", "type": "string" }, "cannot": { "title": "Cannot do this", "description": "Where to go when this step can't be done here.", "$ref": "#/definitions/stepName" }, "go": { "title": "Go", "description": "Next step after something that is only done.", "$ref": "#/definitions/stepName" }, "use": { "title": "Use", "description": "Name of a sub-procedure.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "with": { "title": "With", "description": "What the sub-procedure needs.", "type": "object", "additionalProperties": { "type": "string", "maxLength": 200 } }, "results": { "title": "Results", "description": "Where each result of the sub-procedure leads.", "type": "object", "additionalProperties": { "$ref": "#/definitions/stepName" } }, "result": { "title": "Result", "description": "Ends a sub-procedure with this result.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "conclude": { "title": "Concludes", "description": 'Faults this conclusion covers; an empty list means that no fault was found, "*" alone that nothing was told.', "type": "array", "uniqueItems": true, "maxItems": 80, "items": { "type": "string", "pattern": "^[a-z*][a-z0-9.*-]{0,80}$" }, "examples": [["wire.signal.open"]] }, "repair": { "title": "Repair", "description": "What puts it right.", "$ref": "#/definitions/text" }, "customer": { "title": "For the customer", "description": "What is wrong and how it is known, in plain words.", "$ref": "#/definitions/text" }, "requires": { "title": "Requires", "description": "Of a conclusion: the steps it needs; a step that uses a sub-procedure means all steps in it. If one of them could not be done, the path ends at 'otherwise'.", "type": "array", "uniqueItems": true, "minItems": 1, "maxItems": 60, "items": { "type": "string", "pattern": "^[a-z][a-z0-9/-]{0,120}$" } }, "otherwise": { "title": "Otherwise", "description": "The conclusion that takes its place if a step of 'requires' could not be done.", "$ref": "#/definitions/stepName" }, "retest": { "title": "Retest", "description": "Steps that must pass after the repair.", "type": "array", "uniqueItems": true, "items": { "type": "string", "pattern": "^[a-z][a-z0-9/-]{0,120}$" } } } };
var schema14 = { "description": "Kind of test.", "enum": ["reference", "ground", "signal", "injection", "bypass", "actuation", "continuity", "pattern", "neighbour", "wiggle", "comparison", "inspection", "interview"] };
var schema15 = { "description": "State of the vehicle. Stays as it was in the step before only if you write it again. driving is a road test: it reads no instrument.", "enum": ["key-off", "key-on", "cranking", "running", "driving"] };
var schema19 = { "type": "string", "minLength": 1, "maxLength": 2e3 };
var func7 = Object.prototype.hasOwnProperty;
var pattern5 = new RegExp("^\\$?[a-z][a-z0-9-]{0,60}$", "u");
var pattern21 = new RegExp("^[a-z*][a-z0-9.*-]{0,80}$", "u");
var pattern22 = new RegExp("^[a-z][a-z0-9/-]{0,120}$", "u");
var schema16 = { "title": "Bridge", "description": "Something clipped between two terminals for this step.", "type": "object", "required": ["from", "to"], "additionalProperties": false, "properties": { "from": { "title": "From", "description": "Terminal of one end.", "$ref": "#/definitions/terminal" }, "to": { "title": "To", "description": "Terminal of the other end.", "$ref": "#/definitions/terminal" }, "through": { "title": "Through", "description": "lead (a plain wire), test-light (LED), lamp (filament) or a resistance.", "type": "string", "maxLength": 40, "examples": ["test-light", "1 kohm"] } } };
var schema17 = { "type": "string", "pattern": "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$", "examples": ["sensor.feed", "battery.negative"] };
var pattern6 = new RegExp("^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$", "u");
function validate12(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.from === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'", schema: schema16.required, parentSchema: schema16, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.to === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "to" }, message: "must have required property 'to'", schema: schema16.required, parentSchema: schema16, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "from" || key0 === "to" || key0 === "through")) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema16, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.from !== void 0) {
      let data0 = data.from;
      if (typeof data0 === "string") {
        if (!pattern6.test(data0)) {
          const err3 = { instancePath: instancePath + "/from", schemaPath: "#/definitions/terminal/pattern", keyword: "pattern", params: { pattern: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$" }, message: 'must match pattern "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$"', schema: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$", parentSchema: schema17, data: data0 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/from", schemaPath: "#/definitions/terminal/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema17.type, parentSchema: schema17, data: data0 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.to !== void 0) {
      let data1 = data.to;
      if (typeof data1 === "string") {
        if (!pattern6.test(data1)) {
          const err5 = { instancePath: instancePath + "/to", schemaPath: "#/definitions/terminal/pattern", keyword: "pattern", params: { pattern: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$" }, message: 'must match pattern "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$"', schema: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$", parentSchema: schema17, data: data1 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/to", schemaPath: "#/definitions/terminal/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema17.type, parentSchema: schema17, data: data1 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.through !== void 0) {
      let data2 = data.through;
      if (typeof data2 === "string") {
        if (func2(data2) > 40) {
          const err7 = { instancePath: instancePath + "/through", schemaPath: "#/properties/through/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema16.properties.through, data: data2 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      } else {
        const err8 = { instancePath: instancePath + "/through", schemaPath: "#/properties/through/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema16.properties.through.type, parentSchema: schema16.properties.through, data: data2 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema16.type, parentSchema: schema16, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate12.errors = vErrors;
  return errors === 0;
}
var schema21 = { "title": "Measure", "description": "What is read. One key: the instrument; its value: where the leads go.", "type": "object", "minProperties": 1, "maxProperties": 1, "additionalProperties": false, "properties": { "volts": { "title": "Volts", "description": "A meter on volts: red lead, black lead.", "$ref": "#/definitions/leads" }, "ohms": { "title": "Ohms", "description": "A meter on ohms, on a dead circuit: one lead, the other lead.", "$ref": "#/definitions/leads" }, "amps": { "title": "Milliamperes", "description": "A meter on milliamperes in series, where a wire is opened at its connector: one side, the other side.", "$ref": "#/definitions/leads", "examples": [["sensor.feed", "sensor.feed.pin"]] }, "light": { "title": "LED light", "description": "An LED test light: its positive end, its negative end. It shows lit, dim or dark.", "$ref": "#/definitions/leads" }, "lamp": { "title": "Filament lamp", "description": "A filament test lamp, on battery feeds and grounds only: one end, the other end. It shows lit, dim or dark.", "$ref": "#/definitions/leads" }, "pattern": { "title": "Pattern", "description": "A scope while the target moves: its tip, its ground.", "$ref": "#/definitions/leads" }, "timing": { "title": "Position", "description": "A scope, compared with a known-good or sister signal: its tip, its ground. It shows in-step, shifted or no-signal.", "$ref": "#/definitions/leads" }, "counts": { "title": "Live data", "description": "The module's own live data at this input: does it follow?", "$ref": "#/definitions/terminal" }, "inspect": { "title": "Eyes and fingers", "description": "A part, a connector, a wire, the target.", "type": "string", "pattern": "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9.-]{0,80})$", "examples": ["connector.sensor", "target"] }, "reading": { "title": "Another number", "description": "A number that the circuit model knows nothing of.", "type": "object", "required": ["unit"], "additionalProperties": false, "properties": { "unit": { "title": "Unit", "description": "Unit of the number.", "enum": ["V", "ohm", "A", "Hz", "rpm", "%", "s", "deg"] }, "level": { "title": "Level", "description": "Of a signal in V or A: which of its levels a saved capture gives as the number. swing is peak to peak, ac the root mean square without the mean, as a meter on AC shows it.", "enum": ["low", "high", "mean", "swing", "ac"] }, "low": { "title": "Low end", "description": "Least value of a good circuit.", "$ref": "#/definitions/value" }, "high": { "title": "High end", "description": "Greatest value of a good circuit.", "$ref": "#/definitions/value" } } } } };
var schema25 = { "description": "A value with its unit.", "type": "string", "maxLength": 40, "examples": ["4.75 V", "0.5 ohm"] };
var schema22 = { "description": "Red lead first, black lead second.", "type": "array", "minItems": 2, "maxItems": 2, "items": { "$ref": "#/definitions/terminal" }, "examples": [["sensor.feed", "battery.negative"]] };
function validate16(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (Array.isArray(data)) {
    if (data.length > 2) {
      const err0 = { instancePath, schemaPath: "#/maxItems", keyword: "maxItems", params: { limit: 2 }, message: "must NOT have more than 2 items", schema: 2, parentSchema: schema22, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.length < 2) {
      const err1 = { instancePath, schemaPath: "#/minItems", keyword: "minItems", params: { limit: 2 }, message: "must NOT have fewer than 2 items", schema: 2, parentSchema: schema22, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    const len0 = data.length;
    for (let i0 = 0; i0 < len0; i0++) {
      let data0 = data[i0];
      if (typeof data0 === "string") {
        if (!pattern6.test(data0)) {
          const err2 = { instancePath: instancePath + "/" + i0, schemaPath: "#/definitions/terminal/pattern", keyword: "pattern", params: { pattern: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$" }, message: 'must match pattern "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$"', schema: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$", parentSchema: schema17, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/" + i0, schemaPath: "#/definitions/terminal/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema17.type, parentSchema: schema17, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
  } else {
    const err4 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema22.type, parentSchema: schema22, data };
    if (vErrors === null) {
      vErrors = [err4];
    } else {
      vErrors.push(err4);
    }
    errors++;
  }
  validate16.errors = vErrors;
  return errors === 0;
}
var pattern11 = new RegExp("^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9.-]{0,80})$", "u");
function validate15(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length > 1) {
      const err0 = { instancePath, schemaPath: "#/maxProperties", keyword: "maxProperties", params: { limit: 1 }, message: "must NOT have more than 1 properties", schema: 1, parentSchema: schema21, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (Object.keys(data).length < 1) {
      const err1 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema21, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func7.call(schema21.properties, key0)) {
        const err2 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema21, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.volts !== void 0) {
      if (!validate16(data.volts, { instancePath: instancePath + "/volts", parentData: data, parentDataProperty: "volts", rootData })) {
        vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
        errors = vErrors.length;
      }
    }
    if (data.ohms !== void 0) {
      if (!validate16(data.ohms, { instancePath: instancePath + "/ohms", parentData: data, parentDataProperty: "ohms", rootData })) {
        vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
        errors = vErrors.length;
      }
    }
    if (data.amps !== void 0) {
      if (!validate16(data.amps, { instancePath: instancePath + "/amps", parentData: data, parentDataProperty: "amps", rootData })) {
        vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
        errors = vErrors.length;
      }
    }
    if (data.light !== void 0) {
      if (!validate16(data.light, { instancePath: instancePath + "/light", parentData: data, parentDataProperty: "light", rootData })) {
        vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
        errors = vErrors.length;
      }
    }
    if (data.lamp !== void 0) {
      if (!validate16(data.lamp, { instancePath: instancePath + "/lamp", parentData: data, parentDataProperty: "lamp", rootData })) {
        vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
        errors = vErrors.length;
      }
    }
    if (data.pattern !== void 0) {
      if (!validate16(data.pattern, { instancePath: instancePath + "/pattern", parentData: data, parentDataProperty: "pattern", rootData })) {
        vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
        errors = vErrors.length;
      }
    }
    if (data.timing !== void 0) {
      if (!validate16(data.timing, { instancePath: instancePath + "/timing", parentData: data, parentDataProperty: "timing", rootData })) {
        vErrors = vErrors === null ? validate16.errors : vErrors.concat(validate16.errors);
        errors = vErrors.length;
      }
    }
    if (data.counts !== void 0) {
      let data7 = data.counts;
      if (typeof data7 === "string") {
        if (!pattern6.test(data7)) {
          const err3 = { instancePath: instancePath + "/counts", schemaPath: "#/definitions/terminal/pattern", keyword: "pattern", params: { pattern: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$" }, message: 'must match pattern "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$"', schema: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9-]*(\\.[a-z0-9][a-z0-9-]*){1,2})$", parentSchema: schema17, data: data7 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
      } else {
        const err4 = { instancePath: instancePath + "/counts", schemaPath: "#/definitions/terminal/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema17.type, parentSchema: schema17, data: data7 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.inspect !== void 0) {
      let data8 = data.inspect;
      if (typeof data8 === "string") {
        if (!pattern11.test(data8)) {
          const err5 = { instancePath: instancePath + "/inspect", schemaPath: "#/properties/inspect/pattern", keyword: "pattern", params: { pattern: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9.-]{0,80})$" }, message: 'must match pattern "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9.-]{0,80})$"', schema: "^(\\$[a-z][a-z0-9-]*|[a-z][a-z0-9.-]{0,80})$", parentSchema: schema21.properties.inspect, data: data8 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/inspect", schemaPath: "#/properties/inspect/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema21.properties.inspect.type, parentSchema: schema21.properties.inspect, data: data8 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.reading !== void 0) {
      let data9 = data.reading;
      if (data9 && typeof data9 == "object" && !Array.isArray(data9)) {
        if (data9.unit === void 0) {
          const err7 = { instancePath: instancePath + "/reading", schemaPath: "#/properties/reading/required", keyword: "required", params: { missingProperty: "unit" }, message: "must have required property 'unit'", schema: schema21.properties.reading.required, parentSchema: schema21.properties.reading, data: data9 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        for (const key1 in data9) {
          if (!(key1 === "unit" || key1 === "level" || key1 === "low" || key1 === "high")) {
            const err8 = { instancePath: instancePath + "/reading", schemaPath: "#/properties/reading/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema21.properties.reading, data: data9 };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
        if (data9.unit !== void 0) {
          let data10 = data9.unit;
          if (!(data10 === "V" || data10 === "ohm" || data10 === "A" || data10 === "Hz" || data10 === "rpm" || data10 === "%" || data10 === "s" || data10 === "deg")) {
            const err9 = { instancePath: instancePath + "/reading/unit", schemaPath: "#/properties/reading/properties/unit/enum", keyword: "enum", params: { allowedValues: schema21.properties.reading.properties.unit.enum }, message: "must be equal to one of the allowed values", schema: schema21.properties.reading.properties.unit.enum, parentSchema: schema21.properties.reading.properties.unit, data: data10 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
        if (data9.level !== void 0) {
          let data11 = data9.level;
          if (!(data11 === "low" || data11 === "high" || data11 === "mean" || data11 === "swing" || data11 === "ac")) {
            const err10 = { instancePath: instancePath + "/reading/level", schemaPath: "#/properties/reading/properties/level/enum", keyword: "enum", params: { allowedValues: schema21.properties.reading.properties.level.enum }, message: "must be equal to one of the allowed values", schema: schema21.properties.reading.properties.level.enum, parentSchema: schema21.properties.reading.properties.level, data: data11 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        if (data9.low !== void 0) {
          let data12 = data9.low;
          if (typeof data12 === "string") {
            if (func2(data12) > 40) {
              const err11 = { instancePath: instancePath + "/reading/low", schemaPath: "#/definitions/value/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema25, data: data12 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
          } else {
            const err12 = { instancePath: instancePath + "/reading/low", schemaPath: "#/definitions/value/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema25.type, parentSchema: schema25, data: data12 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
        }
        if (data9.high !== void 0) {
          let data13 = data9.high;
          if (typeof data13 === "string") {
            if (func2(data13) > 40) {
              const err13 = { instancePath: instancePath + "/reading/high", schemaPath: "#/definitions/value/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema25, data: data13 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
          } else {
            const err14 = { instancePath: instancePath + "/reading/high", schemaPath: "#/definitions/value/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema25.type, parentSchema: schema25, data: data13 };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
      } else {
        const err15 = { instancePath: instancePath + "/reading", schemaPath: "#/properties/reading/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema21.properties.reading.type, parentSchema: schema21.properties.reading, data: data9 };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
  } else {
    const err16 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema21.type, parentSchema: schema21, data };
    if (vErrors === null) {
      vErrors = [err16];
    } else {
      vErrors.push(err16);
    }
    errors++;
  }
  validate15.errors = vErrors;
  return errors === 0;
}
var schema27 = { "title": "Outcome", "description": "Where a result leads. A number has from/to or below/above (the lower end counts, the upper does not); a look has look or looks; a question has words, and may say which trouble codes answer it, and which faults can.", "type": "object", "required": ["go"], "additionalProperties": false, "dependencies": { "only-with": ["because"], "never-with": ["because"] }, "properties": { "from": { "title": "From", "description": "Lower limit; it belongs to this outcome.", "$ref": "#/definitions/value" }, "to": { "title": "To", "description": "Upper limit; it belongs to the next outcome.", "$ref": "#/definitions/value" }, "below": { "title": "Below", "description": "Everything less than this.", "$ref": "#/definitions/value" }, "above": { "title": "Above", "description": "This and everything greater.", "$ref": "#/definitions/value" }, "look": { "title": "Look", "description": "What is seen. The name of the outcome will do when it is the look itself.", "$ref": "#/definitions/look" }, "looks": { "title": "Looks", "description": "Several looks that lead to the same step.", "type": "array", "minItems": 1, "items": { "$ref": "#/definitions/look" } }, "words": { "title": "In words", "description": "What it means, in a few words.", "$ref": "#/definitions/text" }, "code-kinds": { "title": "Kinds of code", "description": "Of a question: what a trouble code on the job sheet must say for this answer to be marked, and to be what a simulated vehicle answers.", "type": "array", "minItems": 1, "uniqueItems": true, "items": { "enum": ["circuit", "range", "low", "high", "intermittent", "correlation"] } }, "only-with": { "title": "Only with", "description": "Of a question, or of a number that the circuit does not compute: the faults that can give this answer. Any fault can when it is left out, and a healthy circuit.", "$ref": "#/definitions/faultPatterns" }, "never-with": { "title": "Never with", "description": "Of a question, or of a number that the circuit does not compute: the faults that cannot give this answer, healthy for a circuit without one.", "$ref": "#/definitions/faultPatterns" }, "because": { "title": "Because", "description": "Why only these faults give this answer, or why these never do.", "$ref": "#/definitions/text" }, "go": { "title": "Go", "description": "Step or conclusion that follows.", "$ref": "#/definitions/stepName" } } };
var schema32 = { "enum": ["lit", "dim", "dark", "full", "weak", "uneven", "flat-high", "flat-middle", "flat-low", "follows", "still", "in-step", "shifted", "no-signal", "sound", "faulty"] };
var schema35 = { "type": "array", "uniqueItems": true, "minItems": 1, "maxItems": 40, "items": { "type": "string", "pattern": "^[a-z*$][a-z0-9.*$-]{0,80}$" }, "examples": [["wire.*"]] };
var func0 = require_equal().default;
var pattern13 = new RegExp("^[a-z*$][a-z0-9.*$-]{0,80}$", "u");
function validate27(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.go === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "go" }, message: "must have required property 'go'", schema: schema27.required, parentSchema: schema27, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func7.call(schema27.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema27, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data["only-with"] !== void 0) {
      if (data.because === void 0) {
        const err2 = { instancePath, schemaPath: "#/dependencies", keyword: "dependencies", params: {
          property: "only-with",
          missingProperty: "because",
          depsCount: 1,
          deps: "because"
        }, message: "must have property because when property only-with is present", schema: schema27.dependencies, parentSchema: schema27, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data["never-with"] !== void 0) {
      if (data.because === void 0) {
        const err3 = { instancePath, schemaPath: "#/dependencies", keyword: "dependencies", params: {
          property: "never-with",
          missingProperty: "because",
          depsCount: 1,
          deps: "because"
        }, message: "must have property because when property never-with is present", schema: schema27.dependencies, parentSchema: schema27, data };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.from !== void 0) {
      let data0 = data.from;
      if (typeof data0 === "string") {
        if (func2(data0) > 40) {
          const err4 = { instancePath: instancePath + "/from", schemaPath: "#/definitions/value/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema25, data: data0 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/from", schemaPath: "#/definitions/value/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema25.type, parentSchema: schema25, data: data0 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.to !== void 0) {
      let data1 = data.to;
      if (typeof data1 === "string") {
        if (func2(data1) > 40) {
          const err6 = { instancePath: instancePath + "/to", schemaPath: "#/definitions/value/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema25, data: data1 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else {
        const err7 = { instancePath: instancePath + "/to", schemaPath: "#/definitions/value/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema25.type, parentSchema: schema25, data: data1 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.below !== void 0) {
      let data2 = data.below;
      if (typeof data2 === "string") {
        if (func2(data2) > 40) {
          const err8 = { instancePath: instancePath + "/below", schemaPath: "#/definitions/value/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema25, data: data2 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/below", schemaPath: "#/definitions/value/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema25.type, parentSchema: schema25, data: data2 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.above !== void 0) {
      let data3 = data.above;
      if (typeof data3 === "string") {
        if (func2(data3) > 40) {
          const err10 = { instancePath: instancePath + "/above", schemaPath: "#/definitions/value/maxLength", keyword: "maxLength", params: { limit: 40 }, message: "must NOT have more than 40 characters", schema: 40, parentSchema: schema25, data: data3 };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      } else {
        const err11 = { instancePath: instancePath + "/above", schemaPath: "#/definitions/value/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema25.type, parentSchema: schema25, data: data3 };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
    if (data.look !== void 0) {
      let data4 = data.look;
      if (!(data4 === "lit" || data4 === "dim" || data4 === "dark" || data4 === "full" || data4 === "weak" || data4 === "uneven" || data4 === "flat-high" || data4 === "flat-middle" || data4 === "flat-low" || data4 === "follows" || data4 === "still" || data4 === "in-step" || data4 === "shifted" || data4 === "no-signal" || data4 === "sound" || data4 === "faulty")) {
        const err12 = { instancePath: instancePath + "/look", schemaPath: "#/definitions/look/enum", keyword: "enum", params: { allowedValues: schema32.enum }, message: "must be equal to one of the allowed values", schema: schema32.enum, parentSchema: schema32, data: data4 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.looks !== void 0) {
      let data5 = data.looks;
      if (Array.isArray(data5)) {
        if (data5.length < 1) {
          const err13 = { instancePath: instancePath + "/looks", schemaPath: "#/properties/looks/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema27.properties.looks, data: data5 };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
        const len0 = data5.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data6 = data5[i0];
          if (!(data6 === "lit" || data6 === "dim" || data6 === "dark" || data6 === "full" || data6 === "weak" || data6 === "uneven" || data6 === "flat-high" || data6 === "flat-middle" || data6 === "flat-low" || data6 === "follows" || data6 === "still" || data6 === "in-step" || data6 === "shifted" || data6 === "no-signal" || data6 === "sound" || data6 === "faulty")) {
            const err14 = { instancePath: instancePath + "/looks/" + i0, schemaPath: "#/definitions/look/enum", keyword: "enum", params: { allowedValues: schema32.enum }, message: "must be equal to one of the allowed values", schema: schema32.enum, parentSchema: schema32, data: data6 };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
      } else {
        const err15 = { instancePath: instancePath + "/looks", schemaPath: "#/properties/looks/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema27.properties.looks.type, parentSchema: schema27.properties.looks, data: data5 };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
    if (data.words !== void 0) {
      let data7 = data.words;
      if (typeof data7 === "string") {
        if (func2(data7) > 2e3) {
          const err16 = { instancePath: instancePath + "/words", schemaPath: "#/definitions/text/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema19, data: data7 };
          if (vErrors === null) {
            vErrors = [err16];
          } else {
            vErrors.push(err16);
          }
          errors++;
        }
        if (func2(data7) < 1) {
          const err17 = { instancePath: instancePath + "/words", schemaPath: "#/definitions/text/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema19, data: data7 };
          if (vErrors === null) {
            vErrors = [err17];
          } else {
            vErrors.push(err17);
          }
          errors++;
        }
      } else {
        const err18 = { instancePath: instancePath + "/words", schemaPath: "#/definitions/text/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema19.type, parentSchema: schema19, data: data7 };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data["code-kinds"] !== void 0) {
      let data8 = data["code-kinds"];
      if (Array.isArray(data8)) {
        if (data8.length < 1) {
          const err19 = { instancePath: instancePath + "/code-kinds", schemaPath: "#/properties/code-kinds/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema27.properties["code-kinds"], data: data8 };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
        const len1 = data8.length;
        for (let i1 = 0; i1 < len1; i1++) {
          let data9 = data8[i1];
          if (!(data9 === "circuit" || data9 === "range" || data9 === "low" || data9 === "high" || data9 === "intermittent" || data9 === "correlation")) {
            const err20 = { instancePath: instancePath + "/code-kinds/" + i1, schemaPath: "#/properties/code-kinds/items/enum", keyword: "enum", params: { allowedValues: schema27.properties["code-kinds"].items.enum }, message: "must be equal to one of the allowed values", schema: schema27.properties["code-kinds"].items.enum, parentSchema: schema27.properties["code-kinds"].items, data: data9 };
            if (vErrors === null) {
              vErrors = [err20];
            } else {
              vErrors.push(err20);
            }
            errors++;
          }
        }
        let i2 = data8.length;
        let j0;
        if (i2 > 1) {
          outer0: for (; i2--; ) {
            for (j0 = i2; j0--; ) {
              if (func0(data8[i2], data8[j0])) {
                const err21 = { instancePath: instancePath + "/code-kinds", schemaPath: "#/properties/code-kinds/uniqueItems", keyword: "uniqueItems", params: { i: i2, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i2 + " are identical)", schema: true, parentSchema: schema27.properties["code-kinds"], data: data8 };
                if (vErrors === null) {
                  vErrors = [err21];
                } else {
                  vErrors.push(err21);
                }
                errors++;
                break outer0;
              }
            }
          }
        }
      } else {
        const err22 = { instancePath: instancePath + "/code-kinds", schemaPath: "#/properties/code-kinds/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema27.properties["code-kinds"].type, parentSchema: schema27.properties["code-kinds"], data: data8 };
        if (vErrors === null) {
          vErrors = [err22];
        } else {
          vErrors.push(err22);
        }
        errors++;
      }
    }
    if (data["only-with"] !== void 0) {
      let data10 = data["only-with"];
      if (Array.isArray(data10)) {
        if (data10.length > 40) {
          const err23 = { instancePath: instancePath + "/only-with", schemaPath: "#/definitions/faultPatterns/maxItems", keyword: "maxItems", params: { limit: 40 }, message: "must NOT have more than 40 items", schema: 40, parentSchema: schema35, data: data10 };
          if (vErrors === null) {
            vErrors = [err23];
          } else {
            vErrors.push(err23);
          }
          errors++;
        }
        if (data10.length < 1) {
          const err24 = { instancePath: instancePath + "/only-with", schemaPath: "#/definitions/faultPatterns/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema35, data: data10 };
          if (vErrors === null) {
            vErrors = [err24];
          } else {
            vErrors.push(err24);
          }
          errors++;
        }
        const len2 = data10.length;
        for (let i3 = 0; i3 < len2; i3++) {
          let data11 = data10[i3];
          if (typeof data11 === "string") {
            if (!pattern13.test(data11)) {
              const err25 = { instancePath: instancePath + "/only-with/" + i3, schemaPath: "#/definitions/faultPatterns/items/pattern", keyword: "pattern", params: { pattern: "^[a-z*$][a-z0-9.*$-]{0,80}$" }, message: 'must match pattern "^[a-z*$][a-z0-9.*$-]{0,80}$"', schema: "^[a-z*$][a-z0-9.*$-]{0,80}$", parentSchema: schema35.items, data: data11 };
              if (vErrors === null) {
                vErrors = [err25];
              } else {
                vErrors.push(err25);
              }
              errors++;
            }
          } else {
            const err26 = { instancePath: instancePath + "/only-with/" + i3, schemaPath: "#/definitions/faultPatterns/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema35.items.type, parentSchema: schema35.items, data: data11 };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
        }
        let i4 = data10.length;
        let j1;
        if (i4 > 1) {
          const indices0 = {};
          for (; i4--; ) {
            let item0 = data10[i4];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j1 = indices0[item0];
              const err27 = { instancePath: instancePath + "/only-with", schemaPath: "#/definitions/faultPatterns/uniqueItems", keyword: "uniqueItems", params: { i: i4, j: j1 }, message: "must NOT have duplicate items (items ## " + j1 + " and " + i4 + " are identical)", schema: true, parentSchema: schema35, data: data10 };
              if (vErrors === null) {
                vErrors = [err27];
              } else {
                vErrors.push(err27);
              }
              errors++;
              break;
            }
            indices0[item0] = i4;
          }
        }
      } else {
        const err28 = { instancePath: instancePath + "/only-with", schemaPath: "#/definitions/faultPatterns/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema35.type, parentSchema: schema35, data: data10 };
        if (vErrors === null) {
          vErrors = [err28];
        } else {
          vErrors.push(err28);
        }
        errors++;
      }
    }
    if (data["never-with"] !== void 0) {
      let data12 = data["never-with"];
      if (Array.isArray(data12)) {
        if (data12.length > 40) {
          const err29 = { instancePath: instancePath + "/never-with", schemaPath: "#/definitions/faultPatterns/maxItems", keyword: "maxItems", params: { limit: 40 }, message: "must NOT have more than 40 items", schema: 40, parentSchema: schema35, data: data12 };
          if (vErrors === null) {
            vErrors = [err29];
          } else {
            vErrors.push(err29);
          }
          errors++;
        }
        if (data12.length < 1) {
          const err30 = { instancePath: instancePath + "/never-with", schemaPath: "#/definitions/faultPatterns/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema35, data: data12 };
          if (vErrors === null) {
            vErrors = [err30];
          } else {
            vErrors.push(err30);
          }
          errors++;
        }
        const len3 = data12.length;
        for (let i5 = 0; i5 < len3; i5++) {
          let data13 = data12[i5];
          if (typeof data13 === "string") {
            if (!pattern13.test(data13)) {
              const err31 = { instancePath: instancePath + "/never-with/" + i5, schemaPath: "#/definitions/faultPatterns/items/pattern", keyword: "pattern", params: { pattern: "^[a-z*$][a-z0-9.*$-]{0,80}$" }, message: 'must match pattern "^[a-z*$][a-z0-9.*$-]{0,80}$"', schema: "^[a-z*$][a-z0-9.*$-]{0,80}$", parentSchema: schema35.items, data: data13 };
              if (vErrors === null) {
                vErrors = [err31];
              } else {
                vErrors.push(err31);
              }
              errors++;
            }
          } else {
            const err32 = { instancePath: instancePath + "/never-with/" + i5, schemaPath: "#/definitions/faultPatterns/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema35.items.type, parentSchema: schema35.items, data: data13 };
            if (vErrors === null) {
              vErrors = [err32];
            } else {
              vErrors.push(err32);
            }
            errors++;
          }
        }
        let i6 = data12.length;
        let j2;
        if (i6 > 1) {
          const indices1 = {};
          for (; i6--; ) {
            let item1 = data12[i6];
            if (typeof item1 !== "string") {
              continue;
            }
            if (typeof indices1[item1] == "number") {
              j2 = indices1[item1];
              const err33 = { instancePath: instancePath + "/never-with", schemaPath: "#/definitions/faultPatterns/uniqueItems", keyword: "uniqueItems", params: { i: i6, j: j2 }, message: "must NOT have duplicate items (items ## " + j2 + " and " + i6 + " are identical)", schema: true, parentSchema: schema35, data: data12 };
              if (vErrors === null) {
                vErrors = [err33];
              } else {
                vErrors.push(err33);
              }
              errors++;
              break;
            }
            indices1[item1] = i6;
          }
        }
      } else {
        const err34 = { instancePath: instancePath + "/never-with", schemaPath: "#/definitions/faultPatterns/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema35.type, parentSchema: schema35, data: data12 };
        if (vErrors === null) {
          vErrors = [err34];
        } else {
          vErrors.push(err34);
        }
        errors++;
      }
    }
    if (data.because !== void 0) {
      let data14 = data.because;
      if (typeof data14 === "string") {
        if (func2(data14) > 2e3) {
          const err35 = { instancePath: instancePath + "/because", schemaPath: "#/definitions/text/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema19, data: data14 };
          if (vErrors === null) {
            vErrors = [err35];
          } else {
            vErrors.push(err35);
          }
          errors++;
        }
        if (func2(data14) < 1) {
          const err36 = { instancePath: instancePath + "/because", schemaPath: "#/definitions/text/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema19, data: data14 };
          if (vErrors === null) {
            vErrors = [err36];
          } else {
            vErrors.push(err36);
          }
          errors++;
        }
      } else {
        const err37 = { instancePath: instancePath + "/because", schemaPath: "#/definitions/text/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema19.type, parentSchema: schema19, data: data14 };
        if (vErrors === null) {
          vErrors = [err37];
        } else {
          vErrors.push(err37);
        }
        errors++;
      }
    }
    if (data.go !== void 0) {
      let data15 = data.go;
      if (typeof data15 === "string") {
        if (!pattern3.test(data15)) {
          const err38 = { instancePath: instancePath + "/go", schemaPath: "#/definitions/stepName/pattern", keyword: "pattern", params: { pattern: "^[a-z$][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z$][a-z0-9-]{0,60}$"', schema: "^[a-z$][a-z0-9-]{0,60}$", parentSchema: schema12, data: data15 };
          if (vErrors === null) {
            vErrors = [err38];
          } else {
            vErrors.push(err38);
          }
          errors++;
        }
      } else {
        const err39 = { instancePath: instancePath + "/go", schemaPath: "#/definitions/stepName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data15 };
        if (vErrors === null) {
          vErrors = [err39];
        } else {
          vErrors.push(err39);
        }
        errors++;
      }
    }
  } else {
    const err40 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema27.type, parentSchema: schema27, data };
    if (vErrors === null) {
      vErrors = [err40];
    } else {
      vErrors.push(err40);
    }
    errors++;
  }
  validate27.errors = vErrors;
  return errors === 0;
}
function validate11(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      if (!func7.call(schema13.properties, key0)) {
        const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema13, data };
        if (vErrors === null) {
          vErrors = [err0];
        } else {
          vErrors.push(err0);
        }
        errors++;
      }
    }
    if (data.requires !== void 0) {
      if (data.otherwise === void 0) {
        const err1 = { instancePath, schemaPath: "#/dependencies", keyword: "dependencies", params: {
          property: "requires",
          missingProperty: "otherwise",
          depsCount: 1,
          deps: "otherwise"
        }, message: "must have property otherwise when property requires is present", schema: schema13.dependencies, parentSchema: schema13, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.otherwise !== void 0) {
      if (data.requires === void 0) {
        const err2 = { instancePath, schemaPath: "#/dependencies", keyword: "dependencies", params: {
          property: "otherwise",
          missingProperty: "requires",
          depsCount: 1,
          deps: "requires"
        }, message: "must have property requires when property otherwise is present", schema: schema13.dependencies, parentSchema: schema13, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.title !== void 0) {
      let data0 = data.title;
      if (typeof data0 === "string") {
        if (func2(data0) > 80) {
          const err3 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/maxLength", keyword: "maxLength", params: { limit: 80 }, message: "must NOT have more than 80 characters", schema: 80, parentSchema: schema13.properties.title, data: data0 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (func2(data0) < 1) {
          const err4 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema13.properties.title, data: data0 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
      } else {
        const err5 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.title.type, parentSchema: schema13.properties.title, data: data0 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.test !== void 0) {
      let data1 = data.test;
      if (!(data1 === "reference" || data1 === "ground" || data1 === "signal" || data1 === "injection" || data1 === "bypass" || data1 === "actuation" || data1 === "continuity" || data1 === "pattern" || data1 === "neighbour" || data1 === "wiggle" || data1 === "comparison" || data1 === "inspection" || data1 === "interview")) {
        const err6 = { instancePath: instancePath + "/test", schemaPath: "#/definitions/family/enum", keyword: "enum", params: { allowedValues: schema14.enum }, message: "must be equal to one of the allowed values", schema: schema14.enum, parentSchema: schema14, data: data1 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.state !== void 0) {
      let data2 = data.state;
      if (!(data2 === "key-off" || data2 === "key-on" || data2 === "cranking" || data2 === "running" || data2 === "driving")) {
        const err7 = { instancePath: instancePath + "/state", schemaPath: "#/definitions/state/enum", keyword: "enum", params: { allowedValues: schema15.enum }, message: "must be equal to one of the allowed values", schema: schema15.enum, parentSchema: schema15, data: data2 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.unplug !== void 0) {
      let data3 = data.unplug;
      if (Array.isArray(data3)) {
        if (data3.length > 12) {
          const err8 = { instancePath: instancePath + "/unplug", schemaPath: "#/properties/unplug/maxItems", keyword: "maxItems", params: { limit: 12 }, message: "must NOT have more than 12 items", schema: 12, parentSchema: schema13.properties.unplug, data: data3 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
        const len0 = data3.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data4 = data3[i0];
          if (typeof data4 === "string") {
            if (!pattern5.test(data4)) {
              const err9 = { instancePath: instancePath + "/unplug/" + i0, schemaPath: "#/properties/unplug/items/pattern", keyword: "pattern", params: { pattern: "^\\$?[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^\\$?[a-z][a-z0-9-]{0,60}$"', schema: "^\\$?[a-z][a-z0-9-]{0,60}$", parentSchema: schema13.properties.unplug.items, data: data4 };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
          } else {
            const err10 = { instancePath: instancePath + "/unplug/" + i0, schemaPath: "#/properties/unplug/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.unplug.items.type, parentSchema: schema13.properties.unplug.items, data: data4 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        let i1 = data3.length;
        let j0;
        if (i1 > 1) {
          const indices0 = {};
          for (; i1--; ) {
            let item0 = data3[i1];
            if (typeof item0 !== "string") {
              continue;
            }
            if (typeof indices0[item0] == "number") {
              j0 = indices0[item0];
              const err11 = { instancePath: instancePath + "/unplug", schemaPath: "#/properties/unplug/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)", schema: true, parentSchema: schema13.properties.unplug, data: data3 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
              break;
            }
            indices0[item0] = i1;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/unplug", schemaPath: "#/properties/unplug/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema13.properties.unplug.type, parentSchema: schema13.properties.unplug, data: data3 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.bridge !== void 0) {
      let data5 = data.bridge;
      const _errs13 = errors;
      let valid7 = false;
      let passing0 = null;
      const _errs14 = errors;
      if (!validate12(data5, { instancePath: instancePath + "/bridge", parentData: data, parentDataProperty: "bridge", rootData })) {
        vErrors = vErrors === null ? validate12.errors : vErrors.concat(validate12.errors);
        errors = vErrors.length;
      }
      var _valid0 = _errs14 === errors;
      if (_valid0) {
        valid7 = true;
        passing0 = 0;
      }
      const _errs15 = errors;
      if (Array.isArray(data5)) {
        if (data5.length > 4) {
          const err13 = { instancePath: instancePath + "/bridge", schemaPath: "#/properties/bridge/oneOf/1/maxItems", keyword: "maxItems", params: { limit: 4 }, message: "must NOT have more than 4 items", schema: 4, parentSchema: schema13.properties.bridge.oneOf[1], data: data5 };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
        const len1 = data5.length;
        for (let i2 = 0; i2 < len1; i2++) {
          if (!validate12(data5[i2], { instancePath: instancePath + "/bridge/" + i2, parentData: data5, parentDataProperty: i2, rootData })) {
            vErrors = vErrors === null ? validate12.errors : vErrors.concat(validate12.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err14 = { instancePath: instancePath + "/bridge", schemaPath: "#/properties/bridge/oneOf/1/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema13.properties.bridge.oneOf[1].type, parentSchema: schema13.properties.bridge.oneOf[1], data: data5 };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
      var _valid0 = _errs15 === errors;
      if (_valid0 && valid7) {
        valid7 = false;
        passing0 = [passing0, 1];
      } else {
        if (_valid0) {
          valid7 = true;
          passing0 = 1;
        }
      }
      if (!valid7) {
        const err15 = { instancePath: instancePath + "/bridge", schemaPath: "#/properties/bridge/oneOf", keyword: "oneOf", params: { passingSchemas: passing0 }, message: "must match exactly one schema in oneOf", schema: schema13.properties.bridge.oneOf, parentSchema: schema13.properties.bridge, data: data5 };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      } else {
        errors = _errs13;
        if (vErrors !== null) {
          if (_errs13) {
            vErrors.length = _errs13;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.spare !== void 0) {
      let data7 = data.spare;
      if (typeof data7 !== "boolean") {
        const err16 = { instancePath: instancePath + "/spare", schemaPath: "#/properties/spare/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema13.properties.spare.type, parentSchema: schema13.properties.spare, data: data7 };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
    if (data.moving !== void 0) {
      let data8 = data.moving;
      if (typeof data8 !== "boolean") {
        const err17 = { instancePath: instancePath + "/moving", schemaPath: "#/properties/moving/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema13.properties.moving.type, parentSchema: schema13.properties.moving, data: data8 };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.wiggle !== void 0) {
      let data9 = data.wiggle;
      if (typeof data9 !== "boolean") {
        const err18 = { instancePath: instancePath + "/wiggle", schemaPath: "#/properties/wiggle/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema13.properties.wiggle.type, parentSchema: schema13.properties.wiggle, data: data9 };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data.say !== void 0) {
      let data10 = data.say;
      if (typeof data10 === "string") {
        if (func2(data10) > 2e3) {
          const err19 = { instancePath: instancePath + "/say", schemaPath: "#/definitions/text/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema19, data: data10 };
          if (vErrors === null) {
            vErrors = [err19];
          } else {
            vErrors.push(err19);
          }
          errors++;
        }
        if (func2(data10) < 1) {
          const err20 = { instancePath: instancePath + "/say", schemaPath: "#/definitions/text/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema19, data: data10 };
          if (vErrors === null) {
            vErrors = [err20];
          } else {
            vErrors.push(err20);
          }
          errors++;
        }
      } else {
        const err21 = { instancePath: instancePath + "/say", schemaPath: "#/definitions/text/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema19.type, parentSchema: schema19, data: data10 };
        if (vErrors === null) {
          vErrors = [err21];
        } else {
          vErrors.push(err21);
        }
        errors++;
      }
    }
    if (data.why !== void 0) {
      let data11 = data.why;
      if (typeof data11 === "string") {
        if (func2(data11) > 2e3) {
          const err22 = { instancePath: instancePath + "/why", schemaPath: "#/definitions/text/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema19, data: data11 };
          if (vErrors === null) {
            vErrors = [err22];
          } else {
            vErrors.push(err22);
          }
          errors++;
        }
        if (func2(data11) < 1) {
          const err23 = { instancePath: instancePath + "/why", schemaPath: "#/definitions/text/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema19, data: data11 };
          if (vErrors === null) {
            vErrors = [err23];
          } else {
            vErrors.push(err23);
          }
          errors++;
        }
      } else {
        const err24 = { instancePath: instancePath + "/why", schemaPath: "#/definitions/text/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema19.type, parentSchema: schema19, data: data11 };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
    if (data.minutes !== void 0) {
      let data12 = data.minutes;
      if (typeof data12 == "number" && isFinite(data12)) {
        if (data12 > 240 || isNaN(data12)) {
          const err25 = { instancePath: instancePath + "/minutes", schemaPath: "#/properties/minutes/maximum", keyword: "maximum", params: { comparison: "<=", limit: 240 }, message: "must be <= 240", schema: 240, parentSchema: schema13.properties.minutes, data: data12 };
          if (vErrors === null) {
            vErrors = [err25];
          } else {
            vErrors.push(err25);
          }
          errors++;
        }
        if (data12 < 0 || isNaN(data12)) {
          const err26 = { instancePath: instancePath + "/minutes", schemaPath: "#/properties/minutes/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema13.properties.minutes, data: data12 };
          if (vErrors === null) {
            vErrors = [err26];
          } else {
            vErrors.push(err26);
          }
          errors++;
        }
      } else {
        const err27 = { instancePath: instancePath + "/minutes", schemaPath: "#/properties/minutes/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema13.properties.minutes.type, parentSchema: schema13.properties.minutes, data: data12 };
        if (vErrors === null) {
          vErrors = [err27];
        } else {
          vErrors.push(err27);
        }
        errors++;
      }
    }
    if (data.cautions !== void 0) {
      let data13 = data.cautions;
      if (Array.isArray(data13)) {
        const len2 = data13.length;
        for (let i3 = 0; i3 < len2; i3++) {
          let data14 = data13[i3];
          if (typeof data14 === "string") {
            if (!pattern0.test(data14)) {
              const err28 = { instancePath: instancePath + "/cautions/" + i3, schemaPath: "#/properties/cautions/items/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema13.properties.cautions.items, data: data14 };
              if (vErrors === null) {
                vErrors = [err28];
              } else {
                vErrors.push(err28);
              }
              errors++;
            }
          } else {
            const err29 = { instancePath: instancePath + "/cautions/" + i3, schemaPath: "#/properties/cautions/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.cautions.items.type, parentSchema: schema13.properties.cautions.items, data: data14 };
            if (vErrors === null) {
              vErrors = [err29];
            } else {
              vErrors.push(err29);
            }
            errors++;
          }
        }
        let i4 = data13.length;
        let j1;
        if (i4 > 1) {
          const indices1 = {};
          for (; i4--; ) {
            let item1 = data13[i4];
            if (typeof item1 !== "string") {
              continue;
            }
            if (typeof indices1[item1] == "number") {
              j1 = indices1[item1];
              const err30 = { instancePath: instancePath + "/cautions", schemaPath: "#/properties/cautions/uniqueItems", keyword: "uniqueItems", params: { i: i4, j: j1 }, message: "must NOT have duplicate items (items ## " + j1 + " and " + i4 + " are identical)", schema: true, parentSchema: schema13.properties.cautions, data: data13 };
              if (vErrors === null) {
                vErrors = [err30];
              } else {
                vErrors.push(err30);
              }
              errors++;
              break;
            }
            indices1[item1] = i4;
          }
        }
      } else {
        const err31 = { instancePath: instancePath + "/cautions", schemaPath: "#/properties/cautions/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema13.properties.cautions.type, parentSchema: schema13.properties.cautions, data: data13 };
        if (vErrors === null) {
          vErrors = [err31];
        } else {
          vErrors.push(err31);
        }
        errors++;
      }
    }
    if (data.measure !== void 0) {
      if (!validate15(data.measure, { instancePath: instancePath + "/measure", parentData: data, parentDataProperty: "measure", rootData })) {
        vErrors = vErrors === null ? validate15.errors : vErrors.concat(validate15.errors);
        errors = vErrors.length;
      }
    }
    if (data.watch !== void 0) {
      let data16 = data.watch;
      const _errs38 = errors;
      let valid15 = false;
      let passing1 = null;
      const _errs39 = errors;
      if (!validate15(data16, { instancePath: instancePath + "/watch", parentData: data, parentDataProperty: "watch", rootData })) {
        vErrors = vErrors === null ? validate15.errors : vErrors.concat(validate15.errors);
        errors = vErrors.length;
      }
      var _valid1 = _errs39 === errors;
      if (_valid1) {
        valid15 = true;
        passing1 = 0;
      }
      const _errs40 = errors;
      if (Array.isArray(data16)) {
        if (data16.length > 4) {
          const err32 = { instancePath: instancePath + "/watch", schemaPath: "#/properties/watch/oneOf/1/maxItems", keyword: "maxItems", params: { limit: 4 }, message: "must NOT have more than 4 items", schema: 4, parentSchema: schema13.properties.watch.oneOf[1], data: data16 };
          if (vErrors === null) {
            vErrors = [err32];
          } else {
            vErrors.push(err32);
          }
          errors++;
        }
        if (data16.length < 1) {
          const err33 = { instancePath: instancePath + "/watch", schemaPath: "#/properties/watch/oneOf/1/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema13.properties.watch.oneOf[1], data: data16 };
          if (vErrors === null) {
            vErrors = [err33];
          } else {
            vErrors.push(err33);
          }
          errors++;
        }
        const len3 = data16.length;
        for (let i5 = 0; i5 < len3; i5++) {
          if (!validate15(data16[i5], { instancePath: instancePath + "/watch/" + i5, parentData: data16, parentDataProperty: i5, rootData })) {
            vErrors = vErrors === null ? validate15.errors : vErrors.concat(validate15.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err34 = { instancePath: instancePath + "/watch", schemaPath: "#/properties/watch/oneOf/1/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema13.properties.watch.oneOf[1].type, parentSchema: schema13.properties.watch.oneOf[1], data: data16 };
        if (vErrors === null) {
          vErrors = [err34];
        } else {
          vErrors.push(err34);
        }
        errors++;
      }
      var _valid1 = _errs40 === errors;
      if (_valid1 && valid15) {
        valid15 = false;
        passing1 = [passing1, 1];
      } else {
        if (_valid1) {
          valid15 = true;
          passing1 = 1;
        }
      }
      if (!valid15) {
        const err35 = { instancePath: instancePath + "/watch", schemaPath: "#/properties/watch/oneOf", keyword: "oneOf", params: { passingSchemas: passing1 }, message: "must match exactly one schema in oneOf", schema: schema13.properties.watch.oneOf, parentSchema: schema13.properties.watch, data: data16 };
        if (vErrors === null) {
          vErrors = [err35];
        } else {
          vErrors.push(err35);
        }
        errors++;
      } else {
        errors = _errs38;
        if (vErrors !== null) {
          if (_errs38) {
            vErrors.length = _errs38;
          } else {
            vErrors = null;
          }
        }
      }
    }
    if (data.expect !== void 0) {
      let data18 = data.expect;
      if (typeof data18 === "string") {
        if (func2(data18) > 80) {
          const err36 = { instancePath: instancePath + "/expect", schemaPath: "#/properties/expect/maxLength", keyword: "maxLength", params: { limit: 80 }, message: "must NOT have more than 80 characters", schema: 80, parentSchema: schema13.properties.expect, data: data18 };
          if (vErrors === null) {
            vErrors = [err36];
          } else {
            vErrors.push(err36);
          }
          errors++;
        }
      } else {
        const err37 = { instancePath: instancePath + "/expect", schemaPath: "#/properties/expect/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.expect.type, parentSchema: schema13.properties.expect, data: data18 };
        if (vErrors === null) {
          vErrors = [err37];
        } else {
          vErrors.push(err37);
        }
        errors++;
      }
    }
    if (data.outcomes !== void 0) {
      let data19 = data.outcomes;
      if (data19 && typeof data19 == "object" && !Array.isArray(data19)) {
        if (Object.keys(data19).length > 12) {
          const err38 = { instancePath: instancePath + "/outcomes", schemaPath: "#/properties/outcomes/maxProperties", keyword: "maxProperties", params: { limit: 12 }, message: "must NOT have more than 12 properties", schema: 12, parentSchema: schema13.properties.outcomes, data: data19 };
          if (vErrors === null) {
            vErrors = [err38];
          } else {
            vErrors.push(err38);
          }
          errors++;
        }
        if (Object.keys(data19).length < 1) {
          const err39 = { instancePath: instancePath + "/outcomes", schemaPath: "#/properties/outcomes/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema13.properties.outcomes, data: data19 };
          if (vErrors === null) {
            vErrors = [err39];
          } else {
            vErrors.push(err39);
          }
          errors++;
        }
        for (const key1 in data19) {
          const _errs47 = errors;
          if (typeof key1 === "string") {
            if (!pattern0.test(key1)) {
              const err40 = { instancePath: instancePath + "/outcomes", schemaPath: "#/properties/outcomes/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema13.properties.outcomes.propertyNames, data: key1, propertyName: key1 };
              if (vErrors === null) {
                vErrors = [err40];
              } else {
                vErrors.push(err40);
              }
              errors++;
            }
          }
          var valid18 = _errs47 === errors;
          if (!valid18) {
            const err41 = { instancePath: instancePath + "/outcomes", schemaPath: "#/properties/outcomes/propertyNames", keyword: "propertyNames", params: { propertyName: key1 }, message: "property name must be valid", schema: schema13.properties.outcomes.propertyNames, parentSchema: schema13.properties.outcomes, data: data19 };
            if (vErrors === null) {
              vErrors = [err41];
            } else {
              vErrors.push(err41);
            }
            errors++;
          }
        }
        for (const key2 in data19) {
          if (!validate27(data19[key2], { instancePath: instancePath + "/outcomes/" + key2.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data19, parentDataProperty: key2, rootData })) {
            vErrors = vErrors === null ? validate27.errors : vErrors.concat(validate27.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err42 = { instancePath: instancePath + "/outcomes", schemaPath: "#/properties/outcomes/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema13.properties.outcomes.type, parentSchema: schema13.properties.outcomes, data: data19 };
        if (vErrors === null) {
          vErrors = [err42];
        } else {
          vErrors.push(err42);
        }
        errors++;
      }
    }
    if (data.usual !== void 0) {
      let data21 = data.usual;
      if (typeof data21 !== "string") {
        const err43 = { instancePath: instancePath + "/usual", schemaPath: "#/properties/usual/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.usual.type, parentSchema: schema13.properties.usual, data: data21 };
        if (vErrors === null) {
          vErrors = [err43];
        } else {
          vErrors.push(err43);
        }
        errors++;
      }
    }
    if (data.cannot !== void 0) {
      let data22 = data.cannot;
      if (typeof data22 === "string") {
        if (!pattern3.test(data22)) {
          const err44 = { instancePath: instancePath + "/cannot", schemaPath: "#/definitions/stepName/pattern", keyword: "pattern", params: { pattern: "^[a-z$][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z$][a-z0-9-]{0,60}$"', schema: "^[a-z$][a-z0-9-]{0,60}$", parentSchema: schema12, data: data22 };
          if (vErrors === null) {
            vErrors = [err44];
          } else {
            vErrors.push(err44);
          }
          errors++;
        }
      } else {
        const err45 = { instancePath: instancePath + "/cannot", schemaPath: "#/definitions/stepName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data22 };
        if (vErrors === null) {
          vErrors = [err45];
        } else {
          vErrors.push(err45);
        }
        errors++;
      }
    }
    if (data.go !== void 0) {
      let data23 = data.go;
      if (typeof data23 === "string") {
        if (!pattern3.test(data23)) {
          const err46 = { instancePath: instancePath + "/go", schemaPath: "#/definitions/stepName/pattern", keyword: "pattern", params: { pattern: "^[a-z$][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z$][a-z0-9-]{0,60}$"', schema: "^[a-z$][a-z0-9-]{0,60}$", parentSchema: schema12, data: data23 };
          if (vErrors === null) {
            vErrors = [err46];
          } else {
            vErrors.push(err46);
          }
          errors++;
        }
      } else {
        const err47 = { instancePath: instancePath + "/go", schemaPath: "#/definitions/stepName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data23 };
        if (vErrors === null) {
          vErrors = [err47];
        } else {
          vErrors.push(err47);
        }
        errors++;
      }
    }
    if (data.use !== void 0) {
      let data24 = data.use;
      if (typeof data24 === "string") {
        if (!pattern0.test(data24)) {
          const err48 = { instancePath: instancePath + "/use", schemaPath: "#/properties/use/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema13.properties.use, data: data24 };
          if (vErrors === null) {
            vErrors = [err48];
          } else {
            vErrors.push(err48);
          }
          errors++;
        }
      } else {
        const err49 = { instancePath: instancePath + "/use", schemaPath: "#/properties/use/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.use.type, parentSchema: schema13.properties.use, data: data24 };
        if (vErrors === null) {
          vErrors = [err49];
        } else {
          vErrors.push(err49);
        }
        errors++;
      }
    }
    if (data.with !== void 0) {
      let data25 = data.with;
      if (data25 && typeof data25 == "object" && !Array.isArray(data25)) {
        for (const key3 in data25) {
          let data26 = data25[key3];
          if (typeof data26 === "string") {
            if (func2(data26) > 200) {
              const err50 = { instancePath: instancePath + "/with/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/with/additionalProperties/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema13.properties.with.additionalProperties, data: data26 };
              if (vErrors === null) {
                vErrors = [err50];
              } else {
                vErrors.push(err50);
              }
              errors++;
            }
          } else {
            const err51 = { instancePath: instancePath + "/with/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/with/additionalProperties/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.with.additionalProperties.type, parentSchema: schema13.properties.with.additionalProperties, data: data26 };
            if (vErrors === null) {
              vErrors = [err51];
            } else {
              vErrors.push(err51);
            }
            errors++;
          }
        }
      } else {
        const err52 = { instancePath: instancePath + "/with", schemaPath: "#/properties/with/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema13.properties.with.type, parentSchema: schema13.properties.with, data: data25 };
        if (vErrors === null) {
          vErrors = [err52];
        } else {
          vErrors.push(err52);
        }
        errors++;
      }
    }
    if (data.results !== void 0) {
      let data27 = data.results;
      if (data27 && typeof data27 == "object" && !Array.isArray(data27)) {
        for (const key4 in data27) {
          let data28 = data27[key4];
          if (typeof data28 === "string") {
            if (!pattern3.test(data28)) {
              const err53 = { instancePath: instancePath + "/results/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/definitions/stepName/pattern", keyword: "pattern", params: { pattern: "^[a-z$][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z$][a-z0-9-]{0,60}$"', schema: "^[a-z$][a-z0-9-]{0,60}$", parentSchema: schema12, data: data28 };
              if (vErrors === null) {
                vErrors = [err53];
              } else {
                vErrors.push(err53);
              }
              errors++;
            }
          } else {
            const err54 = { instancePath: instancePath + "/results/" + key4.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/definitions/stepName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data28 };
            if (vErrors === null) {
              vErrors = [err54];
            } else {
              vErrors.push(err54);
            }
            errors++;
          }
        }
      } else {
        const err55 = { instancePath: instancePath + "/results", schemaPath: "#/properties/results/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema13.properties.results.type, parentSchema: schema13.properties.results, data: data27 };
        if (vErrors === null) {
          vErrors = [err55];
        } else {
          vErrors.push(err55);
        }
        errors++;
      }
    }
    if (data.result !== void 0) {
      let data29 = data.result;
      if (typeof data29 === "string") {
        if (!pattern0.test(data29)) {
          const err56 = { instancePath: instancePath + "/result", schemaPath: "#/properties/result/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema13.properties.result, data: data29 };
          if (vErrors === null) {
            vErrors = [err56];
          } else {
            vErrors.push(err56);
          }
          errors++;
        }
      } else {
        const err57 = { instancePath: instancePath + "/result", schemaPath: "#/properties/result/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.result.type, parentSchema: schema13.properties.result, data: data29 };
        if (vErrors === null) {
          vErrors = [err57];
        } else {
          vErrors.push(err57);
        }
        errors++;
      }
    }
    if (data.conclude !== void 0) {
      let data30 = data.conclude;
      if (Array.isArray(data30)) {
        if (data30.length > 80) {
          const err58 = { instancePath: instancePath + "/conclude", schemaPath: "#/properties/conclude/maxItems", keyword: "maxItems", params: { limit: 80 }, message: "must NOT have more than 80 items", schema: 80, parentSchema: schema13.properties.conclude, data: data30 };
          if (vErrors === null) {
            vErrors = [err58];
          } else {
            vErrors.push(err58);
          }
          errors++;
        }
        const len4 = data30.length;
        for (let i6 = 0; i6 < len4; i6++) {
          let data31 = data30[i6];
          if (typeof data31 === "string") {
            if (!pattern21.test(data31)) {
              const err59 = { instancePath: instancePath + "/conclude/" + i6, schemaPath: "#/properties/conclude/items/pattern", keyword: "pattern", params: { pattern: "^[a-z*][a-z0-9.*-]{0,80}$" }, message: 'must match pattern "^[a-z*][a-z0-9.*-]{0,80}$"', schema: "^[a-z*][a-z0-9.*-]{0,80}$", parentSchema: schema13.properties.conclude.items, data: data31 };
              if (vErrors === null) {
                vErrors = [err59];
              } else {
                vErrors.push(err59);
              }
              errors++;
            }
          } else {
            const err60 = { instancePath: instancePath + "/conclude/" + i6, schemaPath: "#/properties/conclude/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.conclude.items.type, parentSchema: schema13.properties.conclude.items, data: data31 };
            if (vErrors === null) {
              vErrors = [err60];
            } else {
              vErrors.push(err60);
            }
            errors++;
          }
        }
        let i7 = data30.length;
        let j2;
        if (i7 > 1) {
          const indices2 = {};
          for (; i7--; ) {
            let item2 = data30[i7];
            if (typeof item2 !== "string") {
              continue;
            }
            if (typeof indices2[item2] == "number") {
              j2 = indices2[item2];
              const err61 = { instancePath: instancePath + "/conclude", schemaPath: "#/properties/conclude/uniqueItems", keyword: "uniqueItems", params: { i: i7, j: j2 }, message: "must NOT have duplicate items (items ## " + j2 + " and " + i7 + " are identical)", schema: true, parentSchema: schema13.properties.conclude, data: data30 };
              if (vErrors === null) {
                vErrors = [err61];
              } else {
                vErrors.push(err61);
              }
              errors++;
              break;
            }
            indices2[item2] = i7;
          }
        }
      } else {
        const err62 = { instancePath: instancePath + "/conclude", schemaPath: "#/properties/conclude/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema13.properties.conclude.type, parentSchema: schema13.properties.conclude, data: data30 };
        if (vErrors === null) {
          vErrors = [err62];
        } else {
          vErrors.push(err62);
        }
        errors++;
      }
    }
    if (data.repair !== void 0) {
      let data32 = data.repair;
      if (typeof data32 === "string") {
        if (func2(data32) > 2e3) {
          const err63 = { instancePath: instancePath + "/repair", schemaPath: "#/definitions/text/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema19, data: data32 };
          if (vErrors === null) {
            vErrors = [err63];
          } else {
            vErrors.push(err63);
          }
          errors++;
        }
        if (func2(data32) < 1) {
          const err64 = { instancePath: instancePath + "/repair", schemaPath: "#/definitions/text/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema19, data: data32 };
          if (vErrors === null) {
            vErrors = [err64];
          } else {
            vErrors.push(err64);
          }
          errors++;
        }
      } else {
        const err65 = { instancePath: instancePath + "/repair", schemaPath: "#/definitions/text/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema19.type, parentSchema: schema19, data: data32 };
        if (vErrors === null) {
          vErrors = [err65];
        } else {
          vErrors.push(err65);
        }
        errors++;
      }
    }
    if (data.customer !== void 0) {
      let data33 = data.customer;
      if (typeof data33 === "string") {
        if (func2(data33) > 2e3) {
          const err66 = { instancePath: instancePath + "/customer", schemaPath: "#/definitions/text/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema19, data: data33 };
          if (vErrors === null) {
            vErrors = [err66];
          } else {
            vErrors.push(err66);
          }
          errors++;
        }
        if (func2(data33) < 1) {
          const err67 = { instancePath: instancePath + "/customer", schemaPath: "#/definitions/text/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema19, data: data33 };
          if (vErrors === null) {
            vErrors = [err67];
          } else {
            vErrors.push(err67);
          }
          errors++;
        }
      } else {
        const err68 = { instancePath: instancePath + "/customer", schemaPath: "#/definitions/text/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema19.type, parentSchema: schema19, data: data33 };
        if (vErrors === null) {
          vErrors = [err68];
        } else {
          vErrors.push(err68);
        }
        errors++;
      }
    }
    if (data.requires !== void 0) {
      let data34 = data.requires;
      if (Array.isArray(data34)) {
        if (data34.length > 60) {
          const err69 = { instancePath: instancePath + "/requires", schemaPath: "#/properties/requires/maxItems", keyword: "maxItems", params: { limit: 60 }, message: "must NOT have more than 60 items", schema: 60, parentSchema: schema13.properties.requires, data: data34 };
          if (vErrors === null) {
            vErrors = [err69];
          } else {
            vErrors.push(err69);
          }
          errors++;
        }
        if (data34.length < 1) {
          const err70 = { instancePath: instancePath + "/requires", schemaPath: "#/properties/requires/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema13.properties.requires, data: data34 };
          if (vErrors === null) {
            vErrors = [err70];
          } else {
            vErrors.push(err70);
          }
          errors++;
        }
        const len5 = data34.length;
        for (let i8 = 0; i8 < len5; i8++) {
          let data35 = data34[i8];
          if (typeof data35 === "string") {
            if (!pattern22.test(data35)) {
              const err71 = { instancePath: instancePath + "/requires/" + i8, schemaPath: "#/properties/requires/items/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9/-]{0,120}$" }, message: 'must match pattern "^[a-z][a-z0-9/-]{0,120}$"', schema: "^[a-z][a-z0-9/-]{0,120}$", parentSchema: schema13.properties.requires.items, data: data35 };
              if (vErrors === null) {
                vErrors = [err71];
              } else {
                vErrors.push(err71);
              }
              errors++;
            }
          } else {
            const err72 = { instancePath: instancePath + "/requires/" + i8, schemaPath: "#/properties/requires/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.requires.items.type, parentSchema: schema13.properties.requires.items, data: data35 };
            if (vErrors === null) {
              vErrors = [err72];
            } else {
              vErrors.push(err72);
            }
            errors++;
          }
        }
        let i9 = data34.length;
        let j3;
        if (i9 > 1) {
          const indices3 = {};
          for (; i9--; ) {
            let item3 = data34[i9];
            if (typeof item3 !== "string") {
              continue;
            }
            if (typeof indices3[item3] == "number") {
              j3 = indices3[item3];
              const err73 = { instancePath: instancePath + "/requires", schemaPath: "#/properties/requires/uniqueItems", keyword: "uniqueItems", params: { i: i9, j: j3 }, message: "must NOT have duplicate items (items ## " + j3 + " and " + i9 + " are identical)", schema: true, parentSchema: schema13.properties.requires, data: data34 };
              if (vErrors === null) {
                vErrors = [err73];
              } else {
                vErrors.push(err73);
              }
              errors++;
              break;
            }
            indices3[item3] = i9;
          }
        }
      } else {
        const err74 = { instancePath: instancePath + "/requires", schemaPath: "#/properties/requires/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema13.properties.requires.type, parentSchema: schema13.properties.requires, data: data34 };
        if (vErrors === null) {
          vErrors = [err74];
        } else {
          vErrors.push(err74);
        }
        errors++;
      }
    }
    if (data.otherwise !== void 0) {
      let data36 = data.otherwise;
      if (typeof data36 === "string") {
        if (!pattern3.test(data36)) {
          const err75 = { instancePath: instancePath + "/otherwise", schemaPath: "#/definitions/stepName/pattern", keyword: "pattern", params: { pattern: "^[a-z$][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z$][a-z0-9-]{0,60}$"', schema: "^[a-z$][a-z0-9-]{0,60}$", parentSchema: schema12, data: data36 };
          if (vErrors === null) {
            vErrors = [err75];
          } else {
            vErrors.push(err75);
          }
          errors++;
        }
      } else {
        const err76 = { instancePath: instancePath + "/otherwise", schemaPath: "#/definitions/stepName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data36 };
        if (vErrors === null) {
          vErrors = [err76];
        } else {
          vErrors.push(err76);
        }
        errors++;
      }
    }
    if (data.retest !== void 0) {
      let data37 = data.retest;
      if (Array.isArray(data37)) {
        const len6 = data37.length;
        for (let i10 = 0; i10 < len6; i10++) {
          let data38 = data37[i10];
          if (typeof data38 === "string") {
            if (!pattern22.test(data38)) {
              const err77 = { instancePath: instancePath + "/retest/" + i10, schemaPath: "#/properties/retest/items/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9/-]{0,120}$" }, message: 'must match pattern "^[a-z][a-z0-9/-]{0,120}$"', schema: "^[a-z][a-z0-9/-]{0,120}$", parentSchema: schema13.properties.retest.items, data: data38 };
              if (vErrors === null) {
                vErrors = [err77];
              } else {
                vErrors.push(err77);
              }
              errors++;
            }
          } else {
            const err78 = { instancePath: instancePath + "/retest/" + i10, schemaPath: "#/properties/retest/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema13.properties.retest.items.type, parentSchema: schema13.properties.retest.items, data: data38 };
            if (vErrors === null) {
              vErrors = [err78];
            } else {
              vErrors.push(err78);
            }
            errors++;
          }
        }
        let i11 = data37.length;
        let j4;
        if (i11 > 1) {
          const indices4 = {};
          for (; i11--; ) {
            let item4 = data37[i11];
            if (typeof item4 !== "string") {
              continue;
            }
            if (typeof indices4[item4] == "number") {
              j4 = indices4[item4];
              const err79 = { instancePath: instancePath + "/retest", schemaPath: "#/properties/retest/uniqueItems", keyword: "uniqueItems", params: { i: i11, j: j4 }, message: "must NOT have duplicate items (items ## " + j4 + " and " + i11 + " are identical)", schema: true, parentSchema: schema13.properties.retest, data: data37 };
              if (vErrors === null) {
                vErrors = [err79];
              } else {
                vErrors.push(err79);
              }
              errors++;
              break;
            }
            indices4[item4] = i11;
          }
        }
      } else {
        const err80 = { instancePath: instancePath + "/retest", schemaPath: "#/properties/retest/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema13.properties.retest.type, parentSchema: schema13.properties.retest, data: data37 };
        if (vErrors === null) {
          vErrors = [err80];
        } else {
          vErrors.push(err80);
        }
        errors++;
      }
    }
  } else {
    const err81 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema13.type, parentSchema: schema13, data };
    if (vErrors === null) {
      vErrors = [err81];
    } else {
      vErrors.push(err81);
    }
    errors++;
  }
  validate11.errors = vErrors;
  return errors === 0;
}
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.procedure === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "procedure" }, message: "must have required property 'procedure'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.title === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "title" }, message: "must have required property 'title'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.start === void 0) {
      const err2 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "start" }, message: "must have required property 'start'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    if (data.steps === void 0) {
      const err3 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "steps" }, message: "must have required property 'steps'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err3];
      } else {
        vErrors.push(err3);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "procedure" || key0 === "title" || key0 === "about" || key0 === "circuit" || key0 === "codes" || key0 === "needs" || key0 === "start" || key0 === "steps")) {
        const err4 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.procedure !== void 0) {
      let data0 = data.procedure;
      if (typeof data0 === "string") {
        if (!pattern0.test(data0)) {
          const err5 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.procedure, data: data0 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.procedure.type, parentSchema: schema11.properties.procedure, data: data0 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.title !== void 0) {
      let data1 = data.title;
      if (typeof data1 === "string") {
        if (func2(data1) > 120) {
          const err7 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/maxLength", keyword: "maxLength", params: { limit: 120 }, message: "must NOT have more than 120 characters", schema: 120, parentSchema: schema11.properties.title, data: data1 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (func2(data1) < 3) {
          const err8 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/minLength", keyword: "minLength", params: { limit: 3 }, message: "must NOT have fewer than 3 characters", schema: 3, parentSchema: schema11.properties.title, data: data1 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/title", schemaPath: "#/properties/title/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.title.type, parentSchema: schema11.properties.title, data: data1 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.about !== void 0) {
      let data2 = data.about;
      if (typeof data2 === "string") {
        if (func2(data2) > 2e3) {
          const err10 = { instancePath: instancePath + "/about", schemaPath: "#/properties/about/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.about, data: data2 };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
      } else {
        const err11 = { instancePath: instancePath + "/about", schemaPath: "#/properties/about/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.about.type, parentSchema: schema11.properties.about, data: data2 };
        if (vErrors === null) {
          vErrors = [err11];
        } else {
          vErrors.push(err11);
        }
        errors++;
      }
    }
    if (data.circuit !== void 0) {
      let data3 = data.circuit;
      if (typeof data3 === "string") {
        if (!pattern0.test(data3)) {
          const err12 = { instancePath: instancePath + "/circuit", schemaPath: "#/properties/circuit/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.circuit, data: data3 };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      } else {
        const err13 = { instancePath: instancePath + "/circuit", schemaPath: "#/properties/circuit/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.circuit.type, parentSchema: schema11.properties.circuit, data: data3 };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
    if (data.codes !== void 0) {
      let data4 = data.codes;
      if (Array.isArray(data4)) {
        if (data4.length > 60) {
          const err14 = { instancePath: instancePath + "/codes", schemaPath: "#/properties/codes/maxItems", keyword: "maxItems", params: { limit: 60 }, message: "must NOT have more than 60 items", schema: 60, parentSchema: schema11.properties.codes, data: data4 };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
        const len0 = data4.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data5 = data4[i0];
          if (typeof data5 === "string") {
            if (!pattern2.test(data5)) {
              const err15 = { instancePath: instancePath + "/codes/" + i0, schemaPath: "#/properties/codes/items/pattern", keyword: "pattern", params: { pattern: "^[PCBU][0-3][0-9A-F]{3}$" }, message: 'must match pattern "^[PCBU][0-3][0-9A-F]{3}$"', schema: "^[PCBU][0-3][0-9A-F]{3}$", parentSchema: schema11.properties.codes.items, data: data5 };
              if (vErrors === null) {
                vErrors = [err15];
              } else {
                vErrors.push(err15);
              }
              errors++;
            }
          } else {
            const err16 = { instancePath: instancePath + "/codes/" + i0, schemaPath: "#/properties/codes/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.codes.items.type, parentSchema: schema11.properties.codes.items, data: data5 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
      } else {
        const err17 = { instancePath: instancePath + "/codes", schemaPath: "#/properties/codes/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.codes.type, parentSchema: schema11.properties.codes, data: data4 };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
    if (data.needs !== void 0) {
      let data6 = data.needs;
      if (data6 && typeof data6 == "object" && !Array.isArray(data6)) {
        for (const key1 in data6) {
          let data7 = data6[key1];
          if (typeof data7 === "string") {
            if (func2(data7) > 200) {
              const err18 = { instancePath: instancePath + "/needs/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/needs/additionalProperties/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.needs.additionalProperties, data: data7 };
              if (vErrors === null) {
                vErrors = [err18];
              } else {
                vErrors.push(err18);
              }
              errors++;
            }
            if (func2(data7) < 1) {
              const err19 = { instancePath: instancePath + "/needs/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/needs/additionalProperties/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.needs.additionalProperties, data: data7 };
              if (vErrors === null) {
                vErrors = [err19];
              } else {
                vErrors.push(err19);
              }
              errors++;
            }
          } else {
            const err20 = { instancePath: instancePath + "/needs/" + key1.replace(/~/g, "~0").replace(/\//g, "~1"), schemaPath: "#/properties/needs/additionalProperties/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.needs.additionalProperties.type, parentSchema: schema11.properties.needs.additionalProperties, data: data7 };
            if (vErrors === null) {
              vErrors = [err20];
            } else {
              vErrors.push(err20);
            }
            errors++;
          }
        }
      } else {
        const err21 = { instancePath: instancePath + "/needs", schemaPath: "#/properties/needs/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.needs.type, parentSchema: schema11.properties.needs, data: data6 };
        if (vErrors === null) {
          vErrors = [err21];
        } else {
          vErrors.push(err21);
        }
        errors++;
      }
    }
    if (data.start !== void 0) {
      let data8 = data.start;
      if (typeof data8 === "string") {
        if (!pattern3.test(data8)) {
          const err22 = { instancePath: instancePath + "/start", schemaPath: "#/definitions/stepName/pattern", keyword: "pattern", params: { pattern: "^[a-z$][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z$][a-z0-9-]{0,60}$"', schema: "^[a-z$][a-z0-9-]{0,60}$", parentSchema: schema12, data: data8 };
          if (vErrors === null) {
            vErrors = [err22];
          } else {
            vErrors.push(err22);
          }
          errors++;
        }
      } else {
        const err23 = { instancePath: instancePath + "/start", schemaPath: "#/definitions/stepName/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data: data8 };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
    }
    if (data.steps !== void 0) {
      let data9 = data.steps;
      if (data9 && typeof data9 == "object" && !Array.isArray(data9)) {
        if (Object.keys(data9).length < 1) {
          const err24 = { instancePath: instancePath + "/steps", schemaPath: "#/properties/steps/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema11.properties.steps, data: data9 };
          if (vErrors === null) {
            vErrors = [err24];
          } else {
            vErrors.push(err24);
          }
          errors++;
        }
        for (const key2 in data9) {
          const _errs24 = errors;
          if (typeof key2 === "string") {
            if (!pattern0.test(key2)) {
              const err25 = { instancePath: instancePath + "/steps", schemaPath: "#/properties/steps/propertyNames/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.steps.propertyNames, data: key2, propertyName: key2 };
              if (vErrors === null) {
                vErrors = [err25];
              } else {
                vErrors.push(err25);
              }
              errors++;
            }
          }
          var valid5 = _errs24 === errors;
          if (!valid5) {
            const err26 = { instancePath: instancePath + "/steps", schemaPath: "#/properties/steps/propertyNames", keyword: "propertyNames", params: { propertyName: key2 }, message: "property name must be valid", schema: schema11.properties.steps.propertyNames, parentSchema: schema11.properties.steps, data: data9 };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
        }
        for (const key3 in data9) {
          if (!validate11(data9[key3], { instancePath: instancePath + "/steps/" + key3.replace(/~/g, "~0").replace(/\//g, "~1"), parentData: data9, parentDataProperty: key3, rootData })) {
            vErrors = vErrors === null ? validate11.errors : vErrors.concat(validate11.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err27 = { instancePath: instancePath + "/steps", schemaPath: "#/properties/steps/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.steps.type, parentSchema: schema11.properties.steps, data: data9 };
        if (vErrors === null) {
          vErrors = [err27];
        } else {
          vErrors.push(err27);
        }
        errors++;
      }
    }
  } else {
    const err28 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err28];
    } else {
      vErrors.push(err28);
    }
    errors++;
  }
  validate10.errors = vErrors;
  return errors === 0;
}
export {
  stdin_default as default,
  validate
};
