// Made from docs/schema/rpc.schema.json by scripts/schemas.mjs. Change the schema, not this file.
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
var validate = validate21;
var stdin_default = validate21;
var schema6 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "rpc.schema.json", "title": "Call", "description": "One message of a program to ohmward run, resume, retest or drill with --rpc: JSON-RPC 2.0, one message a line. Parameters go by name. What comes back is in rpc-answer.schema.json.", "type": "object", "required": ["jsonrpc", "method"], "properties": { "jsonrpc": { "const": "2.0" }, "id": { "title": "Id", "description": "Comes back with the answer; without it there is none. A whole number no larger than 2 to the 53, or better a text.", "type": ["string", "number", "null"] }, "method": { "title": "Method", "description": "What is asked for.", "type": "string" }, "params": { "title": "Parameters", "description": "By name.", "type": "object" } }, "discriminator": { "propertyName": "method" }, "x-choices": ["hello", "procedures", "sheet", "begin", "state", "events", "acknowledge", "reading", "choose", "done", "take", "cannot", "prepare", "tests", "test", "note", "back", "values", "set-value", "prepare-place", "place", "watched", "drive-plan", "capture", "captures", "instruments", "suspects", "next", "aside", "weigh", "accept", "conclude", "retests", "retest", "drive", "call", "work", "close", "keep-good", "pause", "resume", "move", "sketch", "sums", "calculate", "measure", "follow", "repairs", "diagnose", "debrief"], "oneOf": [{ "$ref": "#/definitions/hello" }, { "$ref": "#/definitions/procedures" }, { "$ref": "#/definitions/sheet" }, { "$ref": "#/definitions/begin" }, { "$ref": "#/definitions/state" }, { "$ref": "#/definitions/events" }, { "$ref": "#/definitions/acknowledge" }, { "$ref": "#/definitions/reading" }, { "$ref": "#/definitions/choose" }, { "$ref": "#/definitions/done" }, { "$ref": "#/definitions/take" }, { "$ref": "#/definitions/cannot" }, { "$ref": "#/definitions/prepare" }, { "$ref": "#/definitions/tests" }, { "$ref": "#/definitions/test" }, { "$ref": "#/definitions/note" }, { "$ref": "#/definitions/back" }, { "$ref": "#/definitions/values" }, { "$ref": "#/definitions/set-value" }, { "$ref": "#/definitions/prepare-place" }, { "$ref": "#/definitions/place" }, { "$ref": "#/definitions/watched" }, { "$ref": "#/definitions/drive-plan" }, { "$ref": "#/definitions/capture" }, { "$ref": "#/definitions/captures" }, { "$ref": "#/definitions/instruments" }, { "$ref": "#/definitions/suspects" }, { "$ref": "#/definitions/next" }, { "$ref": "#/definitions/aside" }, { "$ref": "#/definitions/weigh" }, { "$ref": "#/definitions/accept" }, { "$ref": "#/definitions/conclude" }, { "$ref": "#/definitions/retests" }, { "$ref": "#/definitions/retest" }, { "$ref": "#/definitions/drive" }, { "$ref": "#/definitions/call" }, { "$ref": "#/definitions/work" }, { "$ref": "#/definitions/close" }, { "$ref": "#/definitions/keep-good" }, { "$ref": "#/definitions/pause" }, { "$ref": "#/definitions/resume" }, { "$ref": "#/definitions/move" }, { "$ref": "#/definitions/sketch" }, { "$ref": "#/definitions/sums" }, { "$ref": "#/definitions/calculate" }, { "$ref": "#/definitions/measure" }, { "$ref": "#/definitions/follow" }, { "$ref": "#/definitions/repairs" }, { "$ref": "#/definitions/diagnose" }, { "$ref": "#/definitions/debrief" }], "definitions": { "none": { "title": "NoParameters", "type": "object", "additionalProperties": false }, "text": { "type": "string", "minLength": 1, "maxLength": 2e3 }, "name": { "type": "string", "minLength": 1, "maxLength": 200 }, "readingText": { "title": "ReadingText", "description": "As a person types it: 4.98 V, 2.2k, OL. A number alone is in the unit that is asked for.", "type": ["string", "number"], "maxLength": 200, "examples": ["4.98 V"] }, "terminal": { "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.feed"] }, "stateName": { "enum": ["key-off", "key-on", "cranking", "running"] }, "setup": { "title": "SetupForm", "description": "State of vehicle and leads, as the session file has it.", "type": "object", "required": ["state", "unplugged", "bridges", "sensor", "target"], "additionalProperties": false, "properties": { "state": { "title": "Vehicle state", "description": "State of the vehicle.", "$ref": "#/definitions/stateName" }, "unplugged": { "title": "Unplugged", "description": "Parts whose connector is off.", "type": "array", "maxItems": 20, "items": { "$ref": "#/definitions/name" } }, "bridges": { "title": "Clipped in", "description": "What is clipped between two terminals.", "type": "array", "maxItems": 6, "items": { "type": "object", "required": ["from", "to", "through"], "additionalProperties": false, "properties": { "from": { "title": "From", "description": "Terminal of one end.", "$ref": "#/definitions/terminal" }, "to": { "title": "To", "description": "Terminal of the other end.", "$ref": "#/definitions/terminal" }, "through": { "title": "Through", "description": "lead, test-light, lamp, or ohms.", "anyOf": [{ "enum": ["lead", "test-light", "lamp"] }, { "type": "object", "required": ["ohms"], "additionalProperties": false, "properties": { "ohms": { "title": "Ohms", "description": "Resistance in ohms.", "type": "number", "exclusiveMinimum": 0, "maximum": 1e12 } } }] } } } }, "sensor": { "title": "Sensor", "description": "The vehicle's own, or one known to be good.", "enum": ["fitted", "spare"] }, "target": { "title": "Target", "description": "Whether the target passes the sensor.", "enum": ["still", "moving"] } } }, "probe": { "title": "ProbeForm", "description": "Which instrument looks at what, as the session file has it.", "type": "object", "required": ["kind"], "discriminator": { "propertyName": "kind" }, "x-choices": ["volts", "ohms", "light", "lamp", "pattern", "timing", "amps", "counts", "inspect"], "oneOf": [{ "title": "TwoLeads", "type": "object", "required": ["kind", "plus", "minus"], "additionalProperties": false, "properties": { "kind": { "title": "Instrument", "description": "Which instrument.", "enum": ["volts", "ohms", "light", "lamp", "pattern", "timing", "amps"] }, "plus": { "title": "Red lead", "description": "Where it goes.", "$ref": "#/definitions/terminal" }, "minus": { "title": "Black lead", "description": "Where it goes.", "$ref": "#/definitions/terminal" } } }, { "title": "LiveData", "type": "object", "required": ["kind", "input"], "additionalProperties": false, "properties": { "kind": { "const": "counts" }, "input": { "title": "Input", "description": "Of the module, whose live data are read.", "$ref": "#/definitions/terminal" } } }, { "title": "EyesAndFingers", "type": "object", "required": ["kind", "of"], "additionalProperties": false, "properties": { "kind": { "const": "inspect" }, "of": { "title": "Thing", "description": "What is looked at.", "$ref": "#/definitions/terminal" } } }] }, "testForm": { "title": "TestForm", "description": "A test: setup and probe as the session file has them; or in words as in a file of answers, with measure, capture or the name of a standard test.", "type": "object", "minProperties": 1, "additionalProperties": false, "dependencies": { "setup": ["probe"], "probe": ["setup"] }, "properties": { "setup": { "title": "Setup", "description": "State of vehicle and leads; with probe.", "$ref": "#/definitions/setup" }, "probe": { "title": "Probe", "description": "What is read; with setup.", "$ref": "#/definitions/probe" }, "measure": { "title": "Measure", "description": "Instrument and leads, red first.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["volts sensor.feed battery.negative"] }, "capture": { "title": "Capture", "description": "The scope: its tip, its ground.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.signal battery.negative"] }, "test": { "title": "Standard test", "description": "Its id in the answer to tests.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.feed.volts"] }, "state": { "title": "Vehicle state", "description": "State of the vehicle; with measure or capture.", "$ref": "#/definitions/stateName" }, "unplug": { "title": "Unplugged", "description": "Parts whose connector is off; with measure or capture.", "type": "array", "maxItems": 20, "items": { "$ref": "#/definitions/name" } }, "bridges": { "title": "Clipped in", "description": "Two terminals and what is between: lead, test-light, lamp or ohms; with measure or capture.", "type": "array", "maxItems": 6, "items": { "type": "string", "maxLength": 200, "examples": ["sensor.signal battery.negative 470 ohm"] } }, "spare": { "title": "A good spare sensor is plugged in", "description": "Instead of the own one of the vehicle; with measure or capture.", "type": "boolean" }, "moving": { "title": "The target passes the sensor", "description": "By hand or with a magnet; with measure or capture.", "type": "boolean" }, "wiggle": { "title": "Harness and connectors are moved meanwhile", "description": "Brings out an intermittent fault.", "type": "boolean" } } }, "accuracy": { "title": "AccuracyForm", "type": "object", "required": ["ranges", "counts", "ofReading", "digits"], "additionalProperties": false, "properties": { "ranges": { "title": "Ranges", "description": "Full scale of each range in V or ohm, rising.", "type": "array", "minItems": 1, "maxItems": 20, "items": { "type": "number", "exclusiveMinimum": 0 } }, "counts": { "title": "Counts", "description": "Of the display at full scale.", "type": "integer", "minimum": 1, "maximum": 1e6 }, "ofReading": { "title": "Share of the reading", "description": "0.005 for half a per cent.", "type": "number", "minimum": 0, "maximum": 0.2 }, "digits": { "title": "Digits", "description": "Counts of the last digit.", "type": "integer", "minimum": 0, "maximum": 100 } } }, "hello": { "title": "Hello", "description": "Which protocol, which program, which methods there are now. At any time.", "type": "object", "required": ["method"], "properties": { "method": { "const": "hello" }, "params": { "title": "HelloParameters", "description": "Nothing must be given.", "type": "object", "additionalProperties": false, "properties": { "protocol": { "title": "Protocol", "description": "The version that the program speaks; refused when it is another one.", "type": "integer" } } } } }, "procedures": { "title": "Procedures", "description": "What a session can begin with. At any time.", "type": "object", "required": ["method"], "properties": { "method": { "const": "procedures" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "sheet": { "title": "Sheet", "description": "What the job sheet of a procedure can name: terminals, parts that can have been replaced, faults of a simulated vehicle. At any time.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "sheet" }, "params": { "title": "SheetParameters", "description": "Which one.", "type": "object", "required": ["procedure"], "additionalProperties": false, "properties": { "procedure": { "title": "Procedure", "description": "Name of a procedure or of a circuit, or the path of a file.", "type": "string", "minLength": 1, "maxLength": 1e3 } } } } }, "begin": { "title": "Begin", "description": "Begins the session or the drill, once, where the command line has not.", "type": "object", "required": ["method"], "properties": { "method": { "const": "begin" }, "params": { "title": "BeginParameters", "description": "What the command line did not say.", "type": "object", "additionalProperties": false, "properties": { "procedure": { "title": "Procedure", "description": "Name of a procedure or of a circuit, or the path of a file.", "type": "string", "minLength": 1, "maxLength": 1e3 }, "job": { "title": "Job sheet", "description": "With the keys of job.schema.json, against which it is checked; not in a drill.", "type": "object" }, "bench": { "title": "Simulated vehicle", "description": "Instead of a real one; not in a drill.", "type": "object", "required": ["fault"], "additionalProperties": false, "properties": { "fault": { "title": "Fault", "description": "What it has; healthy for nothing.", "$ref": "#/definitions/name" }, "seed": { "title": "Seed", "description": "Its tolerances; 1 when left out.", "type": "integer", "minimum": 0, "maximum": 4294967295 }, "intermittent": { "title": "Intermittent", "description": "The fault shows only to who moves the harness.", "type": "boolean" } } }, "level": { "title": "Level", "description": "Of a drill; named when left out.", "enum": ["named", "unnamed", "blind", "intermittent", "double", "misled"] }, "seed": { "title": "Seed", "description": "Of a drill: which vehicle; any when left out.", "type": "integer", "minimum": 0, "maximum": 4294967295 }, "student": { "title": "Student", "description": "Of a drill: whose it is.", "type": "string", "maxLength": 200 } } } } }, "state": { "title": "State", "description": "State of the session.", "type": "object", "required": ["method"], "properties": { "method": { "const": "state" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "events": { "title": "Events", "description": "The events of the session, as the file has them without their chain.", "type": "object", "required": ["method"], "properties": { "method": { "const": "events" }, "params": { "title": "EventsParameters", "description": "From where on.", "type": "object", "additionalProperties": false, "properties": { "from": { "title": "From", "description": "Number of the first event that is wanted, from 1.", "type": "integer", "minimum": 1 } } } } }, "acknowledge": { "title": "Acknowledge", "description": "A person has read a caution and understood it: of the present step, of a test after the repair, or of a test that no step asks for.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "acknowledge" }, "params": { "title": "AcknowledgeParameters", "description": "Which caution, and who has read it.", "type": "object", "required": ["caution", "person"], "additionalProperties": false, "properties": { "caution": { "title": "Caution", "description": "Its id. On a simulated vehicle also a list of several.", "type": ["string", "array"], "minLength": 1, "maxLength": 200, "minItems": 1, "maxItems": 40, "uniqueItems": true, "items": { "$ref": "#/definitions/name" } }, "person": { "title": "Person", "description": "Name of the person who has read it.", "type": "string", "maxLength": 200, "pattern": "\\S", "examples": ["R. Example"] }, "step": { "title": "Step", "description": "A test after the repair, by its step.", "$ref": "#/definitions/name" }, "test": { "title": "Test", "description": "A test that no step asks for.", "$ref": "#/definitions/testForm" } } } } }, "reading": { "title": "Reading", "description": "Answers the present step with a number.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "reading" }, "params": { "title": "ReadingParameters", "description": "What was read.", "type": "object", "required": ["reading"], "additionalProperties": false, "properties": { "reading": { "title": "Reading", "description": "As a person types it.", "$ref": "#/definitions/readingText" }, "sure": { "title": "Sure", "description": "The meter really shows this, though it looks like a slip.", "type": "boolean" } } } } }, "choose": { "title": "Choose", "description": "Answers the present step with an outcome, or with what was seen.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "choose" }, "params": { "title": "ChooseParameters", "description": "Which.", "type": "object", "required": ["choose"], "additionalProperties": false, "properties": { "choose": { "title": "Choice", "description": "Name of an outcome, or of a look.", "$ref": "#/definitions/name" } } } } }, "done": { "title": "Done", "description": "What the present step asks for is done.", "type": "object", "required": ["method"], "properties": { "method": { "const": "done" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "take": { "title": "Take", "description": "Answers the present step with what the simulated vehicle shows.", "type": "object", "required": ["method"], "properties": { "method": { "const": "take" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "cannot": { "title": "Cannot", "description": "The present step cannot be done here.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "cannot" }, "params": { "title": "CannotParameters", "description": "Why.", "type": "object", "required": ["reason"], "additionalProperties": false, "properties": { "reason": { "title": "Reason", "description": "In a few words.", "$ref": "#/definitions/text" } } } } }, "prepare": { "title": "Prepare", "description": "What a test would be: its words and minutes, what it takes, what is good, its cautions, and what the simulated vehicle shows. Nothing is done.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "prepare" }, "params": { "title": "PrepareParameters", "description": "Which.", "type": "object", "required": ["test"], "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Any test on this circuit.", "$ref": "#/definitions/testForm" } } } } }, "tests": { "title": "Tests", "description": "The tests of the procedure and the usual ones of the circuit.", "type": "object", "required": ["method"], "properties": { "method": { "const": "tests" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "test": { "title": "Test", "description": "Records a test that no step asks for, at any time.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "test" }, "params": { "title": "TestParameters", "description": "Which test, and one of reading, choose and take.", "type": "object", "required": ["test"], "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Any test on this circuit.", "$ref": "#/definitions/testForm" }, "reading": { "title": "Reading", "description": "What the meter showed.", "$ref": "#/definitions/readingText" }, "choose": { "title": "Choice", "description": "What was seen: name of a look.", "$ref": "#/definitions/name" }, "take": { "title": "Take", "description": "What the simulated vehicle shows.", "type": "boolean" }, "sure": { "title": "Sure", "description": "The meter really shows this, though it looks like a slip.", "type": "boolean" }, "made": { "title": "When it was made", "description": "Of one that was made already; no cautions then.", "type": "string", "pattern": "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$", "examples": ["before the job", "14:05"] }, "note": { "title": "Note", "description": "A remark on it.", "$ref": "#/definitions/text" } } } } }, "note": { "title": "Note", "description": "Writes a note.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "note" }, "params": { "title": "NoteParameters", "description": "What.", "type": "object", "required": ["text"], "additionalProperties": false, "properties": { "text": { "title": "Text", "description": "A remark that goes into the record.", "$ref": "#/definitions/text" } } } } }, "values": { "title": "Values", "description": "What can be known of this car, what is known of it, and what the readings have shown.", "type": "object", "required": ["method"], "properties": { "method": { "const": "values" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "set-value": { "title": "SetValue", "description": "Sets a value of this car; all readings are weighed with it. Until the conclusion.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "set-value" }, "params": { "title": "SetValueParameters", "description": "What, its value, and from where.", "type": "object", "required": ["quantity", "is", "from"], "additionalProperties": false, "properties": { "quantity": { "title": "Quantity", "description": "Its key in the answer to values, or its words.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["module.reference.volts"] }, "is": { "title": "Is", "description": "A value as in a circuit file, one of its ways, or unknown for not known after all.", "type": "string", "minLength": 1, "maxLength": 400, "examples": ["8 V +/- 3 %", "battery"] }, "from": { "title": "From", "description": "maker, measured, label or other; then words of one's own.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["measured"] } } } } }, "prepare-place": { "title": "PreparePlace", "description": "How the location of a short is measured along a stretch of wire, and what there is to be placed.", "type": "object", "required": ["method"], "properties": { "method": { "const": "prepare-place" }, "params": { "title": "PreparePlaceParameters", "description": "Nothing for the list of shorts; else a wire and what it touches.", "type": "object", "additionalProperties": false, "dependencies": { "wire": ["touches"], "touches": ["wire"] }, "properties": { "wire": { "title": "Wire", "description": "A wire of the sensor.", "$ref": "#/definitions/name" }, "touches": { "title": "Touches", "description": "ground, battery, or another wire of the sensor, as in feed-wire.", "$ref": "#/definitions/name" }, "from": { "title": "From", "description": "Near end of the stretch; the sensor's connector when left out.", "$ref": "#/definitions/name" }, "to": { "title": "To", "description": "Far end of the stretch; that of the wire when left out.", "$ref": "#/definitions/name" } } } } }, "place": { "title": "Place", "description": "Records the drops along a stretch of wire, and where the short is. Until the conclusion.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "place" }, "params": { "title": "PlaceParameters", "description": "The stretch, what was off, and both drops.", "type": "object", "required": ["wire", "touches", "drops", "unplugged"], "additionalProperties": false, "properties": { "wire": { "title": "Wire", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "touches": { "title": "Touches", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "from": { "title": "From", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "to": { "title": "To", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "drops": { "title": "Drops", "description": "Fed at the near end, then at the far one; behind ; currents and length where they are known.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["6.6 mV, 15.5 mV", "6.6 mV, 15.5 mV; currents 0.21 A, 0.20 A; length 1.2 m"] }, "unplugged": { "title": "Unplugged", "description": "Parts that were off.", "type": "array", "maxItems": 20, "items": { "$ref": "#/definitions/name" } } } } } }, "back": { "title": "Back", "description": "Takes back an answer, and a conclusion with it; or the value that was set last, where that was done last.", "type": "object", "required": ["method"], "properties": { "method": { "const": "back" }, "params": { "title": "BackParameters", "description": "The last answer when left out.", "type": "object", "additionalProperties": false, "properties": { "to": { "title": "To", "description": "Place in the path of the state, from 0.", "type": "integer", "minimum": 0 } } } } }, "watched": { "title": "Watched", "description": "What was seen in one round of moving or warming, which answers nothing: at the present step, or at one that is made again after the repair.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "watched" }, "params": { "title": "WatchedParameters", "description": "One round.", "type": "object", "required": ["seen"], "additionalProperties": false, "properties": { "seen": { "title": "Seen", "description": "As a person types it.", "type": "string", "minLength": 1, "maxLength": 2e3, "examples": ["plug: 4.9 V to 5.1 V, 0 drops, 3 min"] }, "step": { "title": "Step", "description": "After the repair: the step that is made again.", "$ref": "#/definitions/name" } } } } }, "drive-plan": { "title": "DrivePlan", "description": "What to record on a drive, for a fault that nothing wakes here.", "type": "object", "required": ["method"], "properties": { "method": { "const": "drive-plan" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "capture": { "title": "Capture", "description": "Measures a saved capture, or one of the simulated vehicle, for the present step, a test after the repair, or a test that no step asks for.", "type": "object", "required": ["method"], "properties": { "method": { "const": "capture" }, "params": { "title": "CaptureParameters", "description": "In a drill only test, and the capture counts at once.", "type": "object", "additionalProperties": false, "properties": { "file": { "title": "File", "description": "Path of the capture; the simulated vehicle makes one when left out.", "type": "string", "minLength": 1, "maxLength": 4e3 }, "second": { "title": "Second file", "description": "Path of the file with the other channels of the same crank.", "type": "string", "minLength": 1, "maxLength": 4e3 }, "against": { "title": "Against", "description": "Path of a known-good capture; or the angles the edges should be at. What the job sheet states when left out.", "type": "string", "minLength": 1, "maxLength": 4e3, "examples": ["good.csv", "falls at 114 deg, rises at 294 deg; within 4 deg"] }, "channel": { "title": "Channel", "description": "Which one is judged, from 1.", "type": "integer", "minimum": 1, "maximum": 1e3 }, "step": { "title": "Step", "description": "A test after the repair, by its step.", "$ref": "#/definitions/name" }, "test": { "title": "Test", "description": "A test that no step asks for.", "$ref": "#/definitions/testForm" }, "record": { "title": "Record", "description": "Takes it as the answer; it is only measured when left out.", "type": "boolean" } } } } }, "captures": { "title": "Captures", "description": "Capture files to choose from.", "type": "object", "required": ["method"], "properties": { "method": { "const": "captures" }, "params": { "title": "CapturesParameters", "description": "Where the choice begins when left out.", "type": "object", "dependencies": { "name": ["folder"] }, "additionalProperties": false, "properties": { "folder": { "title": "Folder", "description": "What is in it.", "type": "string", "minLength": 1, "maxLength": 4e3 }, "name": { "title": "Name", "description": "What it leads to from there, as a person types it.", "type": "string", "minLength": 1, "maxLength": 4e3 } } } } }, "instruments": { "title": "Instruments", "description": "What is at hand; changes it when anything is given.", "type": "object", "required": ["method"], "properties": { "method": { "const": "instruments" }, "params": { "title": "InstrumentsParameters", "description": "What is left out stays.", "type": "object", "additionalProperties": false, "properties": { "instruments": { "title": "Instruments", "description": "All that are at hand.", "type": "array", "uniqueItems": true, "items": { "enum": ["meter", "test-light", "lamp", "scope", "live-data", "spare-sensor", "resistor", "lead", "milliammeter", "helper"] } }, "meter": { "title": "Meter", "description": "Its accuracy, from its manual.", "type": "object", "required": ["name", "inputOhms", "volts", "ohms"], "additionalProperties": false, "properties": { "name": { "title": "Name", "description": "As shown on reports.", "type": "string", "maxLength": 200 }, "inputOhms": { "title": "Input resistance", "description": "In ohms.", "type": "number", "minimum": 1e4, "maximum": 1e12 }, "volts": { "title": "Volts", "description": "On volts.", "$ref": "#/definitions/accuracy" }, "ohms": { "title": "Ohms", "description": "On ohms.", "$ref": "#/definitions/accuracy" }, "amps": { "title": "Milliamperes", "description": "On milliamperes; an ordinary one where it is left out.", "$ref": "#/definitions/accuracy" } } } } } } }, "suspects": { "title": "Suspects", "description": "All that it could be, by chance.", "type": "object", "required": ["method"], "properties": { "method": { "const": "suspects" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "next": { "title": "Next", "description": "The tests that would tell most now, best first, without those that were set aside.", "type": "object", "required": ["method"], "properties": { "method": { "const": "next" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "aside": { "title": "Aside", "description": "This test can't be done here, and is proposed no more; or can after all. Of a connector or a vehicle state: all that need it, and steps of the tree that need it are skipped.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "aside" }, "params": { "title": "AsideParameters", "description": "Which: a test, a connector or a vehicle state.", "type": "object", "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "As in test.", "$ref": "#/definitions/testForm" }, "connector": { "title": "Connector", "description": "The part whose connector cannot be reached.", "$ref": "#/definitions/name" }, "state": { "title": "State", "description": "The state that the vehicle cannot be had in, nor in one that is reached through it.", "enum": ["key-on", "cranking", "running"] }, "reason": { "title": "Reason", "description": "With a connector or a state: in a few words, for the record. Left out: that it could not be reached, or the vehicle not be had so.", "$ref": "#/definitions/text" }, "aside": { "title": "Aside", "description": "False: it can be made after all. Left out it is true.", "type": "boolean" } } } } }, "weigh": { "title": "Weigh", "description": "What speaks for a conclusion and what would prove it. Nothing is concluded.", "type": "object", "required": ["method"], "properties": { "method": { "const": "weigh" }, "params": { "title": "WeighParameters", "description": "The tree's own conclusion when left out.", "type": "object", "additionalProperties": false, "properties": { "faults": { "title": "Faults", "description": "Of the circuit.", "type": "array", "maxItems": 80, "items": { "$ref": "#/definitions/name" } } } } } }, "accept": { "title": "Accept", "description": "Accepts the conclusion that the tree has come to.", "type": "object", "required": ["method"], "properties": { "method": { "const": "accept" }, "params": { "title": "AcceptParameters", "description": "Whether it is accepted all the same.", "type": "object", "additionalProperties": false, "properties": { "sure": { "title": "All the same", "description": "It rests on one reading that is not made again.", "type": "boolean" } } } } }, "conclude": { "title": "Conclude", "description": "A conclusion of one's own, whatever the tree says.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "conclude" }, "params": { "title": "ConcludeParameters", "description": "Faults of the circuit, or words.", "type": "object", "minProperties": 1, "additionalProperties": false, "properties": { "faults": { "title": "Faults", "description": "Of the circuit.", "type": "array", "minItems": 1, "maxItems": 80, "items": { "$ref": "#/definitions/name" } }, "words": { "title": "In words", "description": "What is wrong, where no fault of the circuit says it.", "$ref": "#/definitions/text" }, "sure": { "title": "All the same", "description": "It rests on one reading that is not made again.", "type": "boolean" } } } } }, "keep-good": { "title": "KeepGood", "description": "Keeps the captures that passed after the repair as known-good ones of this vehicle.", "type": "object", "required": ["method"], "properties": { "method": { "const": "keep-good" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "retests": { "title": "Retests", "description": "The tests that must pass after the repair, with the readings before and after.", "type": "object", "required": ["method"], "properties": { "method": { "const": "retests" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "retest": { "title": "Retest", "description": "Answers a test after the repair.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "retest" }, "params": { "title": "RetestParameters", "description": "Which step, and one of reading, choose, take and cannot.", "type": "object", "required": ["step"], "additionalProperties": false, "properties": { "step": { "title": "Step", "description": "Of the answer to retests.", "$ref": "#/definitions/name" }, "reading": { "title": "Reading", "description": "What the meter showed.", "$ref": "#/definitions/readingText" }, "choose": { "title": "Choice", "description": "Name of an outcome, or of a look.", "$ref": "#/definitions/name" }, "take": { "title": "Take", "description": "What the simulated vehicle shows after its repair.", "type": "boolean" }, "cannot": { "title": "Cannot", "description": "Why it cannot be made.", "$ref": "#/definitions/text" }, "sure": { "title": "Sure", "description": "The meter really shows this, though it looks like a slip.", "type": "boolean" } } } } }, "drive": { "title": "Drive", "description": "Reports what the trouble codes did once the vehicle was driven; also of a closed record.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "drive" }, "params": { "title": "Parameters", "description": "What the codes did, and how it was driven.", "type": "object", "required": ["code"], "additionalProperties": false, "properties": { "code": { "title": "Code", "description": "What they did.", "enum": ["stayed-away", "came-back"] }, "words": { "title": "Words", "description": "How it was driven, and what else was seen.", "type": "string", "maxLength": 2e3 } } } } }, "call": { "title": "Call", "description": "What the customer is told on the telephone: three sentences, and prices by the rates of the shop. Nothing is done.", "type": "object", "required": ["method"], "properties": { "method": { "const": "call" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "work": { "title": "Work", "description": "What the customer said about the work, after a conclusion.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "work" }, "params": { "title": "Parameters", "description": "Who said what.", "type": "object", "required": ["answer", "by"], "additionalProperties": false, "properties": { "answer": { "title": "Answer", "description": "What was said.", "enum": ["authorised", "declined"] }, "by": { "title": "By", "description": "Who said it.", "type": "string", "minLength": 1, "maxLength": 200 }, "words": { "title": "Words", "description": "How, and up to what it may cost.", "type": "string", "maxLength": 2e3 } } } } }, "close": { "title": "Close", "description": "Closes the record with what the tests after the repair say.", "type": "object", "required": ["method"], "properties": { "method": { "const": "close" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "pause": { "title": "Pause", "description": "Pauses the session. The end of input does the same.", "type": "object", "required": ["method"], "properties": { "method": { "const": "pause" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "resume": { "title": "Resume", "description": "Goes on with a paused session.", "type": "object", "required": ["method"], "properties": { "method": { "const": "resume" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "move": { "title": "Move", "description": "After the disk has refused: goes on in another folder, and saves there what was not saved.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "move" }, "params": { "title": "MoveParameters", "description": "Where to.", "type": "object", "required": ["folder"], "additionalProperties": false, "properties": { "folder": { "title": "Folder", "description": "Path of the folder.", "type": "string", "minLength": 1, "maxLength": 4e3 } } } } }, "sketch": { "title": "Sketch", "description": "The wiring as lines of text, with the leads of the present step or of a test on it.", "type": "object", "required": ["method"], "properties": { "method": { "const": "sketch" }, "params": { "title": "SketchParameters", "description": "Nothing must be given.", "type": "object", "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Whose leads are shown.", "$ref": "#/definitions/testForm" }, "columns": { "title": "Columns", "description": "How wide; 78 when left out.", "type": "integer", "minimum": 40, "maximum": 400 } } } } }, "sums": { "title": "Sums", "description": "The small sums that fit the present step.", "type": "object", "required": ["method"], "properties": { "method": { "const": "sums" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "calculate": { "title": "Calculate", "description": "One sum with values of one's own.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "calculate" }, "params": { "title": "CalculateParameters", "description": "As for ohmward calc.", "type": "object", "required": ["line"], "additionalProperties": false, "properties": { "line": { "title": "Line", "description": "Name and options of the sum.", "type": "string", "minLength": 1, "maxLength": 2e3, "examples": ["wire --size 0.5mm2 --length 3m"] } } } } }, "measure": { "title": "Measure", "description": "In a drill: makes any test at the vehicle.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "measure" }, "params": { "title": "MeasureParameters", "description": "Which.", "type": "object", "required": ["test"], "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Any test on this circuit.", "$ref": "#/definitions/testForm" } } } } }, "follow": { "title": "Follow", "description": "In a drill: does the present step of the procedure.", "type": "object", "required": ["method"], "properties": { "method": { "const": "follow" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "repairs": { "title": "Repairs", "description": "In a drill: what the diagnosis can be.", "type": "object", "required": ["method"], "properties": { "method": { "const": "repairs" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } }, "diagnose": { "title": "Diagnose", "description": "In a drill: gives the diagnosis, which ends it.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "diagnose" }, "params": { "title": "DiagnoseParameters", "description": "Of the answer to repairs.", "type": "object", "required": ["repairs"], "additionalProperties": false, "properties": { "repairs": { "title": "Repairs", "description": "By their names; none gives it up.", "type": "array", "maxItems": 10, "uniqueItems": true, "items": { "$ref": "#/definitions/name" } } } } } }, "debrief": { "title": "Debrief", "description": "In a drill that has ended: what was wrong, what the readings said, the score.", "type": "object", "required": ["method"], "properties": { "method": { "const": "debrief" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } } } };
var schema7 = { "title": "Hello", "description": "Which protocol, which program, which methods there are now. At any time.", "type": "object", "required": ["method"], "properties": { "method": { "const": "hello" }, "params": { "title": "HelloParameters", "description": "Nothing must be given.", "type": "object", "additionalProperties": false, "properties": { "protocol": { "title": "Protocol", "description": "The version that the program speaks; refused when it is another one.", "type": "integer" } } } } };
function validate22(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema7.required, parentSchema: schema7, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("hello" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "hello" }, message: "must be equal to constant", schema: "hello", parentSchema: schema7.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "protocol")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema7.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.protocol !== void 0) {
          let data2 = data1.protocol;
          if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
            const err3 = { instancePath: instancePath + "/params/protocol", schemaPath: "#/properties/params/properties/protocol/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema7.properties.params.properties.protocol.type, parentSchema: schema7.properties.params.properties.protocol, data: data2 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
      } else {
        const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema7.properties.params.type, parentSchema: schema7.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
  } else {
    const err5 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema7.type, parentSchema: schema7, data };
    if (vErrors === null) {
      vErrors = [err5];
    } else {
      vErrors.push(err5);
    }
    errors++;
  }
  validate22.errors = vErrors;
  return errors === 0;
}
var schema8 = { "title": "Procedures", "description": "What a session can begin with. At any time.", "type": "object", "required": ["method"], "properties": { "method": { "const": "procedures" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
var schema9 = { "title": "NoParameters", "type": "object", "additionalProperties": false };
function validate24(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    for (const key0 in data) {
      const err0 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema9, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
  } else {
    const err1 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema9.type, parentSchema: schema9, data };
    if (vErrors === null) {
      vErrors = [err1];
    } else {
      vErrors.push(err1);
    }
    errors++;
  }
  validate24.errors = vErrors;
  return errors === 0;
}
function validate23(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema8.required, parentSchema: schema8, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("procedures" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "procedures" }, message: "must be equal to constant", schema: "procedures", parentSchema: schema8.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema8.type, parentSchema: schema8, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate23.errors = vErrors;
  return errors === 0;
}
var schema10 = { "title": "Sheet", "description": "What the job sheet of a procedure can name: terminals, parts that can have been replaced, faults of a simulated vehicle. At any time.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "sheet" }, "params": { "title": "SheetParameters", "description": "Which one.", "type": "object", "required": ["procedure"], "additionalProperties": false, "properties": { "procedure": { "title": "Procedure", "description": "Name of a procedure or of a circuit, or the path of a file.", "type": "string", "minLength": 1, "maxLength": 1e3 } } } } };
var func2 = require_ucs2length().default;
function validate26(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema10.required, parentSchema: schema10, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema10.required, parentSchema: schema10, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("sheet" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "sheet" }, message: "must be equal to constant", schema: "sheet", parentSchema: schema10.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.procedure === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "procedure" }, message: "must have required property 'procedure'", schema: schema10.properties.params.required, parentSchema: schema10.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "procedure")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema10.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.procedure !== void 0) {
          let data2 = data1.procedure;
          if (typeof data2 === "string") {
            if (func2(data2) > 1e3) {
              const err5 = { instancePath: instancePath + "/params/procedure", schemaPath: "#/properties/params/properties/procedure/maxLength", keyword: "maxLength", params: { limit: 1e3 }, message: "must NOT have more than 1000 characters", schema: 1e3, parentSchema: schema10.properties.params.properties.procedure, data: data2 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err6 = { instancePath: instancePath + "/params/procedure", schemaPath: "#/properties/params/properties/procedure/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema10.properties.params.properties.procedure, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
          } else {
            const err7 = { instancePath: instancePath + "/params/procedure", schemaPath: "#/properties/params/properties/procedure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema10.properties.params.properties.procedure.type, parentSchema: schema10.properties.params.properties.procedure, data: data2 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
      } else {
        const err8 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema10.properties.params.type, parentSchema: schema10.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema10.type, parentSchema: schema10, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate26.errors = vErrors;
  return errors === 0;
}
var schema11 = { "title": "Begin", "description": "Begins the session or the drill, once, where the command line has not.", "type": "object", "required": ["method"], "properties": { "method": { "const": "begin" }, "params": { "title": "BeginParameters", "description": "What the command line did not say.", "type": "object", "additionalProperties": false, "properties": { "procedure": { "title": "Procedure", "description": "Name of a procedure or of a circuit, or the path of a file.", "type": "string", "minLength": 1, "maxLength": 1e3 }, "job": { "title": "Job sheet", "description": "With the keys of job.schema.json, against which it is checked; not in a drill.", "type": "object" }, "bench": { "title": "Simulated vehicle", "description": "Instead of a real one; not in a drill.", "type": "object", "required": ["fault"], "additionalProperties": false, "properties": { "fault": { "title": "Fault", "description": "What it has; healthy for nothing.", "$ref": "#/definitions/name" }, "seed": { "title": "Seed", "description": "Its tolerances; 1 when left out.", "type": "integer", "minimum": 0, "maximum": 4294967295 }, "intermittent": { "title": "Intermittent", "description": "The fault shows only to who moves the harness.", "type": "boolean" } } }, "level": { "title": "Level", "description": "Of a drill; named when left out.", "enum": ["named", "unnamed", "blind", "intermittent", "double", "misled"] }, "seed": { "title": "Seed", "description": "Of a drill: which vehicle; any when left out.", "type": "integer", "minimum": 0, "maximum": 4294967295 }, "student": { "title": "Student", "description": "Of a drill: whose it is.", "type": "string", "maxLength": 200 } } } } };
var schema12 = { "type": "string", "minLength": 1, "maxLength": 200 };
function validate28(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (typeof data === "string") {
    if (func2(data) > 200) {
      const err0 = { instancePath, schemaPath: "#/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema12, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (func2(data) < 1) {
      const err1 = { instancePath, schemaPath: "#/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema12, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema12.type, parentSchema: schema12, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate28.errors = vErrors;
  return errors === 0;
}
function validate27(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("begin" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "begin" }, message: "must be equal to constant", schema: "begin", parentSchema: schema11.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "procedure" || key0 === "job" || key0 === "bench" || key0 === "level" || key0 === "seed" || key0 === "student")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.procedure !== void 0) {
          let data2 = data1.procedure;
          if (typeof data2 === "string") {
            if (func2(data2) > 1e3) {
              const err3 = { instancePath: instancePath + "/params/procedure", schemaPath: "#/properties/params/properties/procedure/maxLength", keyword: "maxLength", params: { limit: 1e3 }, message: "must NOT have more than 1000 characters", schema: 1e3, parentSchema: schema11.properties.params.properties.procedure, data: data2 };
              if (vErrors === null) {
                vErrors = [err3];
              } else {
                vErrors.push(err3);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err4 = { instancePath: instancePath + "/params/procedure", schemaPath: "#/properties/params/properties/procedure/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.params.properties.procedure, data: data2 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          } else {
            const err5 = { instancePath: instancePath + "/params/procedure", schemaPath: "#/properties/params/properties/procedure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.params.properties.procedure.type, parentSchema: schema11.properties.params.properties.procedure, data: data2 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.job !== void 0) {
          let data3 = data1.job;
          if (!(data3 && typeof data3 == "object" && !Array.isArray(data3))) {
            const err6 = { instancePath: instancePath + "/params/job", schemaPath: "#/properties/params/properties/job/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.params.properties.job.type, parentSchema: schema11.properties.params.properties.job, data: data3 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
        if (data1.bench !== void 0) {
          let data4 = data1.bench;
          if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
            if (data4.fault === void 0) {
              const err7 = { instancePath: instancePath + "/params/bench", schemaPath: "#/properties/params/properties/bench/required", keyword: "required", params: { missingProperty: "fault" }, message: "must have required property 'fault'", schema: schema11.properties.params.properties.bench.required, parentSchema: schema11.properties.params.properties.bench, data: data4 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            for (const key1 in data4) {
              if (!(key1 === "fault" || key1 === "seed" || key1 === "intermittent")) {
                const err8 = { instancePath: instancePath + "/params/bench", schemaPath: "#/properties/params/properties/bench/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.params.properties.bench, data: data4 };
                if (vErrors === null) {
                  vErrors = [err8];
                } else {
                  vErrors.push(err8);
                }
                errors++;
              }
            }
            if (data4.fault !== void 0) {
              if (!validate28(data4.fault, { instancePath: instancePath + "/params/bench/fault", parentData: data4, parentDataProperty: "fault", rootData })) {
                vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
                errors = vErrors.length;
              }
            }
            if (data4.seed !== void 0) {
              let data6 = data4.seed;
              if (!(typeof data6 == "number" && (!(data6 % 1) && !isNaN(data6)) && isFinite(data6))) {
                const err9 = { instancePath: instancePath + "/params/bench/seed", schemaPath: "#/properties/params/properties/bench/properties/seed/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema11.properties.params.properties.bench.properties.seed.type, parentSchema: schema11.properties.params.properties.bench.properties.seed, data: data6 };
                if (vErrors === null) {
                  vErrors = [err9];
                } else {
                  vErrors.push(err9);
                }
                errors++;
              }
              if (typeof data6 == "number" && isFinite(data6)) {
                if (data6 > 4294967295 || isNaN(data6)) {
                  const err10 = { instancePath: instancePath + "/params/bench/seed", schemaPath: "#/properties/params/properties/bench/properties/seed/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4294967295 }, message: "must be <= 4294967295", schema: 4294967295, parentSchema: schema11.properties.params.properties.bench.properties.seed, data: data6 };
                  if (vErrors === null) {
                    vErrors = [err10];
                  } else {
                    vErrors.push(err10);
                  }
                  errors++;
                }
                if (data6 < 0 || isNaN(data6)) {
                  const err11 = { instancePath: instancePath + "/params/bench/seed", schemaPath: "#/properties/params/properties/bench/properties/seed/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.params.properties.bench.properties.seed, data: data6 };
                  if (vErrors === null) {
                    vErrors = [err11];
                  } else {
                    vErrors.push(err11);
                  }
                  errors++;
                }
              }
            }
            if (data4.intermittent !== void 0) {
              let data7 = data4.intermittent;
              if (typeof data7 !== "boolean") {
                const err12 = { instancePath: instancePath + "/params/bench/intermittent", schemaPath: "#/properties/params/properties/bench/properties/intermittent/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.params.properties.bench.properties.intermittent.type, parentSchema: schema11.properties.params.properties.bench.properties.intermittent, data: data7 };
                if (vErrors === null) {
                  vErrors = [err12];
                } else {
                  vErrors.push(err12);
                }
                errors++;
              }
            }
          } else {
            const err13 = { instancePath: instancePath + "/params/bench", schemaPath: "#/properties/params/properties/bench/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.params.properties.bench.type, parentSchema: schema11.properties.params.properties.bench, data: data4 };
            if (vErrors === null) {
              vErrors = [err13];
            } else {
              vErrors.push(err13);
            }
            errors++;
          }
        }
        if (data1.level !== void 0) {
          let data8 = data1.level;
          if (!(data8 === "named" || data8 === "unnamed" || data8 === "blind" || data8 === "intermittent" || data8 === "double" || data8 === "misled")) {
            const err14 = { instancePath: instancePath + "/params/level", schemaPath: "#/properties/params/properties/level/enum", keyword: "enum", params: { allowedValues: schema11.properties.params.properties.level.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.params.properties.level.enum, parentSchema: schema11.properties.params.properties.level, data: data8 };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
        if (data1.seed !== void 0) {
          let data9 = data1.seed;
          if (!(typeof data9 == "number" && (!(data9 % 1) && !isNaN(data9)) && isFinite(data9))) {
            const err15 = { instancePath: instancePath + "/params/seed", schemaPath: "#/properties/params/properties/seed/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema11.properties.params.properties.seed.type, parentSchema: schema11.properties.params.properties.seed, data: data9 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
          if (typeof data9 == "number" && isFinite(data9)) {
            if (data9 > 4294967295 || isNaN(data9)) {
              const err16 = { instancePath: instancePath + "/params/seed", schemaPath: "#/properties/params/properties/seed/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4294967295 }, message: "must be <= 4294967295", schema: 4294967295, parentSchema: schema11.properties.params.properties.seed, data: data9 };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
            if (data9 < 0 || isNaN(data9)) {
              const err17 = { instancePath: instancePath + "/params/seed", schemaPath: "#/properties/params/properties/seed/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.params.properties.seed, data: data9 };
              if (vErrors === null) {
                vErrors = [err17];
              } else {
                vErrors.push(err17);
              }
              errors++;
            }
          }
        }
        if (data1.student !== void 0) {
          let data10 = data1.student;
          if (typeof data10 === "string") {
            if (func2(data10) > 200) {
              const err18 = { instancePath: instancePath + "/params/student", schemaPath: "#/properties/params/properties/student/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.params.properties.student, data: data10 };
              if (vErrors === null) {
                vErrors = [err18];
              } else {
                vErrors.push(err18);
              }
              errors++;
            }
          } else {
            const err19 = { instancePath: instancePath + "/params/student", schemaPath: "#/properties/params/properties/student/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.params.properties.student.type, parentSchema: schema11.properties.params.properties.student, data: data10 };
            if (vErrors === null) {
              vErrors = [err19];
            } else {
              vErrors.push(err19);
            }
            errors++;
          }
        }
      } else {
        const err20 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.params.type, parentSchema: schema11.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
    }
  } else {
    const err21 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err21];
    } else {
      vErrors.push(err21);
    }
    errors++;
  }
  validate27.errors = vErrors;
  return errors === 0;
}
var schema13 = { "title": "State", "description": "State of the session.", "type": "object", "required": ["method"], "properties": { "method": { "const": "state" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate30(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema13.required, parentSchema: schema13, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("state" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "state" }, message: "must be equal to constant", schema: "state", parentSchema: schema13.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema13.type, parentSchema: schema13, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate30.errors = vErrors;
  return errors === 0;
}
var schema14 = { "title": "Events", "description": "The events of the session, as the file has them without their chain.", "type": "object", "required": ["method"], "properties": { "method": { "const": "events" }, "params": { "title": "EventsParameters", "description": "From where on.", "type": "object", "additionalProperties": false, "properties": { "from": { "title": "From", "description": "Number of the first event that is wanted, from 1.", "type": "integer", "minimum": 1 } } } } };
function validate32(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema14.required, parentSchema: schema14, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("events" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "events" }, message: "must be equal to constant", schema: "events", parentSchema: schema14.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "from")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema14.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.from !== void 0) {
          let data2 = data1.from;
          if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
            const err3 = { instancePath: instancePath + "/params/from", schemaPath: "#/properties/params/properties/from/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema14.properties.params.properties.from.type, parentSchema: schema14.properties.params.properties.from, data: data2 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          if (typeof data2 == "number" && isFinite(data2)) {
            if (data2 < 1 || isNaN(data2)) {
              const err4 = { instancePath: instancePath + "/params/from", schemaPath: "#/properties/params/properties/from/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema14.properties.params.properties.from, data: data2 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema14.properties.params.type, parentSchema: schema14.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema14.type, parentSchema: schema14, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate32.errors = vErrors;
  return errors === 0;
}
var schema15 = { "title": "Acknowledge", "description": "A person has read a caution and understood it: of the present step, of a test after the repair, or of a test that no step asks for.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "acknowledge" }, "params": { "title": "AcknowledgeParameters", "description": "Which caution, and who has read it.", "type": "object", "required": ["caution", "person"], "additionalProperties": false, "properties": { "caution": { "title": "Caution", "description": "Its id. On a simulated vehicle also a list of several.", "type": ["string", "array"], "minLength": 1, "maxLength": 200, "minItems": 1, "maxItems": 40, "uniqueItems": true, "items": { "$ref": "#/definitions/name" } }, "person": { "title": "Person", "description": "Name of the person who has read it.", "type": "string", "maxLength": 200, "pattern": "\\S", "examples": ["R. Example"] }, "step": { "title": "Step", "description": "A test after the repair, by its step.", "$ref": "#/definitions/name" }, "test": { "title": "Test", "description": "A test that no step asks for.", "$ref": "#/definitions/testForm" } } } } };
var func0 = require_equal().default;
var schema16 = { "title": "TestForm", "description": "A test: setup and probe as the session file has them; or in words as in a file of answers, with measure, capture or the name of a standard test.", "type": "object", "minProperties": 1, "additionalProperties": false, "dependencies": { "setup": ["probe"], "probe": ["setup"] }, "properties": { "setup": { "title": "Setup", "description": "State of vehicle and leads; with probe.", "$ref": "#/definitions/setup" }, "probe": { "title": "Probe", "description": "What is read; with setup.", "$ref": "#/definitions/probe" }, "measure": { "title": "Measure", "description": "Instrument and leads, red first.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["volts sensor.feed battery.negative"] }, "capture": { "title": "Capture", "description": "The scope: its tip, its ground.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.signal battery.negative"] }, "test": { "title": "Standard test", "description": "Its id in the answer to tests.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.feed.volts"] }, "state": { "title": "Vehicle state", "description": "State of the vehicle; with measure or capture.", "$ref": "#/definitions/stateName" }, "unplug": { "title": "Unplugged", "description": "Parts whose connector is off; with measure or capture.", "type": "array", "maxItems": 20, "items": { "$ref": "#/definitions/name" } }, "bridges": { "title": "Clipped in", "description": "Two terminals and what is between: lead, test-light, lamp or ohms; with measure or capture.", "type": "array", "maxItems": 6, "items": { "type": "string", "maxLength": 200, "examples": ["sensor.signal battery.negative 470 ohm"] } }, "spare": { "title": "A good spare sensor is plugged in", "description": "Instead of the own one of the vehicle; with measure or capture.", "type": "boolean" }, "moving": { "title": "The target passes the sensor", "description": "By hand or with a magnet; with measure or capture.", "type": "boolean" }, "wiggle": { "title": "Harness and connectors are moved meanwhile", "description": "Brings out an intermittent fault.", "type": "boolean" } } };
var func13 = Object.prototype.hasOwnProperty;
var schema17 = { "title": "SetupForm", "description": "State of vehicle and leads, as the session file has it.", "type": "object", "required": ["state", "unplugged", "bridges", "sensor", "target"], "additionalProperties": false, "properties": { "state": { "title": "Vehicle state", "description": "State of the vehicle.", "$ref": "#/definitions/stateName" }, "unplugged": { "title": "Unplugged", "description": "Parts whose connector is off.", "type": "array", "maxItems": 20, "items": { "$ref": "#/definitions/name" } }, "bridges": { "title": "Clipped in", "description": "What is clipped between two terminals.", "type": "array", "maxItems": 6, "items": { "type": "object", "required": ["from", "to", "through"], "additionalProperties": false, "properties": { "from": { "title": "From", "description": "Terminal of one end.", "$ref": "#/definitions/terminal" }, "to": { "title": "To", "description": "Terminal of the other end.", "$ref": "#/definitions/terminal" }, "through": { "title": "Through", "description": "lead, test-light, lamp, or ohms.", "anyOf": [{ "enum": ["lead", "test-light", "lamp"] }, { "type": "object", "required": ["ohms"], "additionalProperties": false, "properties": { "ohms": { "title": "Ohms", "description": "Resistance in ohms.", "type": "number", "exclusiveMinimum": 0, "maximum": 1e12 } } }] } } } }, "sensor": { "title": "Sensor", "description": "The vehicle's own, or one known to be good.", "enum": ["fitted", "spare"] }, "target": { "title": "Target", "description": "Whether the target passes the sensor.", "enum": ["still", "moving"] } } };
var schema18 = { "enum": ["key-off", "key-on", "cranking", "running"] };
function validate38(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (!(data === "key-off" || data === "key-on" || data === "cranking" || data === "running")) {
    const err0 = { instancePath, schemaPath: "#/enum", keyword: "enum", params: { allowedValues: schema18.enum }, message: "must be equal to one of the allowed values", schema: schema18.enum, parentSchema: schema18, data };
    if (vErrors === null) {
      vErrors = [err0];
    } else {
      vErrors.push(err0);
    }
    errors++;
  }
  validate38.errors = vErrors;
  return errors === 0;
}
var schema19 = { "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.feed"] };
function validate41(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (typeof data === "string") {
    if (func2(data) > 200) {
      const err0 = { instancePath, schemaPath: "#/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema19, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (func2(data) < 1) {
      const err1 = { instancePath, schemaPath: "#/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema19, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema19.type, parentSchema: schema19, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate41.errors = vErrors;
  return errors === 0;
}
function validate37(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.state === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "state" }, message: "must have required property 'state'", schema: schema17.required, parentSchema: schema17, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.unplugged === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "unplugged" }, message: "must have required property 'unplugged'", schema: schema17.required, parentSchema: schema17, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.bridges === void 0) {
      const err2 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "bridges" }, message: "must have required property 'bridges'", schema: schema17.required, parentSchema: schema17, data };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    if (data.sensor === void 0) {
      const err3 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "sensor" }, message: "must have required property 'sensor'", schema: schema17.required, parentSchema: schema17, data };
      if (vErrors === null) {
        vErrors = [err3];
      } else {
        vErrors.push(err3);
      }
      errors++;
    }
    if (data.target === void 0) {
      const err4 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "target" }, message: "must have required property 'target'", schema: schema17.required, parentSchema: schema17, data };
      if (vErrors === null) {
        vErrors = [err4];
      } else {
        vErrors.push(err4);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "state" || key0 === "unplugged" || key0 === "bridges" || key0 === "sensor" || key0 === "target")) {
        const err5 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema17, data };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    if (data.state !== void 0) {
      if (!validate38(data.state, { instancePath: instancePath + "/state", parentData: data, parentDataProperty: "state", rootData })) {
        vErrors = vErrors === null ? validate38.errors : vErrors.concat(validate38.errors);
        errors = vErrors.length;
      }
    }
    if (data.unplugged !== void 0) {
      let data1 = data.unplugged;
      if (Array.isArray(data1)) {
        if (data1.length > 20) {
          const err6 = { instancePath: instancePath + "/unplugged", schemaPath: "#/properties/unplugged/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema17.properties.unplugged, data: data1 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        const len0 = data1.length;
        for (let i0 = 0; i0 < len0; i0++) {
          if (!validate28(data1[i0], { instancePath: instancePath + "/unplugged/" + i0, parentData: data1, parentDataProperty: i0, rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err7 = { instancePath: instancePath + "/unplugged", schemaPath: "#/properties/unplugged/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema17.properties.unplugged.type, parentSchema: schema17.properties.unplugged, data: data1 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
    if (data.bridges !== void 0) {
      let data3 = data.bridges;
      if (Array.isArray(data3)) {
        if (data3.length > 6) {
          const err8 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/maxItems", keyword: "maxItems", params: { limit: 6 }, message: "must NOT have more than 6 items", schema: 6, parentSchema: schema17.properties.bridges, data: data3 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
        const len1 = data3.length;
        for (let i1 = 0; i1 < len1; i1++) {
          let data4 = data3[i1];
          if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
            if (data4.from === void 0) {
              const err9 = { instancePath: instancePath + "/bridges/" + i1, schemaPath: "#/properties/bridges/items/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'", schema: schema17.properties.bridges.items.required, parentSchema: schema17.properties.bridges.items, data: data4 };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
            if (data4.to === void 0) {
              const err10 = { instancePath: instancePath + "/bridges/" + i1, schemaPath: "#/properties/bridges/items/required", keyword: "required", params: { missingProperty: "to" }, message: "must have required property 'to'", schema: schema17.properties.bridges.items.required, parentSchema: schema17.properties.bridges.items, data: data4 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
            if (data4.through === void 0) {
              const err11 = { instancePath: instancePath + "/bridges/" + i1, schemaPath: "#/properties/bridges/items/required", keyword: "required", params: { missingProperty: "through" }, message: "must have required property 'through'", schema: schema17.properties.bridges.items.required, parentSchema: schema17.properties.bridges.items, data: data4 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
            for (const key1 in data4) {
              if (!(key1 === "from" || key1 === "to" || key1 === "through")) {
                const err12 = { instancePath: instancePath + "/bridges/" + i1, schemaPath: "#/properties/bridges/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema17.properties.bridges.items, data: data4 };
                if (vErrors === null) {
                  vErrors = [err12];
                } else {
                  vErrors.push(err12);
                }
                errors++;
              }
            }
            if (data4.from !== void 0) {
              if (!validate41(data4.from, { instancePath: instancePath + "/bridges/" + i1 + "/from", parentData: data4, parentDataProperty: "from", rootData })) {
                vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
                errors = vErrors.length;
              }
            }
            if (data4.to !== void 0) {
              if (!validate41(data4.to, { instancePath: instancePath + "/bridges/" + i1 + "/to", parentData: data4, parentDataProperty: "to", rootData })) {
                vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
                errors = vErrors.length;
              }
            }
            if (data4.through !== void 0) {
              let data7 = data4.through;
              const _errs14 = errors;
              let valid6 = false;
              const _errs15 = errors;
              if (!(data7 === "lead" || data7 === "test-light" || data7 === "lamp")) {
                const err13 = { instancePath: instancePath + "/bridges/" + i1 + "/through", schemaPath: "#/properties/bridges/items/properties/through/anyOf/0/enum", keyword: "enum", params: { allowedValues: schema17.properties.bridges.items.properties.through.anyOf[0].enum }, message: "must be equal to one of the allowed values", schema: schema17.properties.bridges.items.properties.through.anyOf[0].enum, parentSchema: schema17.properties.bridges.items.properties.through.anyOf[0], data: data7 };
                if (vErrors === null) {
                  vErrors = [err13];
                } else {
                  vErrors.push(err13);
                }
                errors++;
              }
              var _valid0 = _errs15 === errors;
              valid6 = valid6 || _valid0;
              if (!valid6) {
                const _errs16 = errors;
                if (data7 && typeof data7 == "object" && !Array.isArray(data7)) {
                  if (data7.ohms === void 0) {
                    const err14 = { instancePath: instancePath + "/bridges/" + i1 + "/through", schemaPath: "#/properties/bridges/items/properties/through/anyOf/1/required", keyword: "required", params: { missingProperty: "ohms" }, message: "must have required property 'ohms'", schema: schema17.properties.bridges.items.properties.through.anyOf[1].required, parentSchema: schema17.properties.bridges.items.properties.through.anyOf[1], data: data7 };
                    if (vErrors === null) {
                      vErrors = [err14];
                    } else {
                      vErrors.push(err14);
                    }
                    errors++;
                  }
                  for (const key2 in data7) {
                    if (!(key2 === "ohms")) {
                      const err15 = { instancePath: instancePath + "/bridges/" + i1 + "/through", schemaPath: "#/properties/bridges/items/properties/through/anyOf/1/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema17.properties.bridges.items.properties.through.anyOf[1], data: data7 };
                      if (vErrors === null) {
                        vErrors = [err15];
                      } else {
                        vErrors.push(err15);
                      }
                      errors++;
                    }
                  }
                  if (data7.ohms !== void 0) {
                    let data8 = data7.ohms;
                    if (typeof data8 == "number" && isFinite(data8)) {
                      if (data8 > 1e12 || isNaN(data8)) {
                        const err16 = { instancePath: instancePath + "/bridges/" + i1 + "/through/ohms", schemaPath: "#/properties/bridges/items/properties/through/anyOf/1/properties/ohms/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e12 }, message: "must be <= 1000000000000", schema: 1e12, parentSchema: schema17.properties.bridges.items.properties.through.anyOf[1].properties.ohms, data: data8 };
                        if (vErrors === null) {
                          vErrors = [err16];
                        } else {
                          vErrors.push(err16);
                        }
                        errors++;
                      }
                      if (data8 <= 0 || isNaN(data8)) {
                        const err17 = { instancePath: instancePath + "/bridges/" + i1 + "/through/ohms", schemaPath: "#/properties/bridges/items/properties/through/anyOf/1/properties/ohms/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 }, message: "must be > 0", schema: 0, parentSchema: schema17.properties.bridges.items.properties.through.anyOf[1].properties.ohms, data: data8 };
                        if (vErrors === null) {
                          vErrors = [err17];
                        } else {
                          vErrors.push(err17);
                        }
                        errors++;
                      }
                    } else {
                      const err18 = { instancePath: instancePath + "/bridges/" + i1 + "/through/ohms", schemaPath: "#/properties/bridges/items/properties/through/anyOf/1/properties/ohms/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema17.properties.bridges.items.properties.through.anyOf[1].properties.ohms.type, parentSchema: schema17.properties.bridges.items.properties.through.anyOf[1].properties.ohms, data: data8 };
                      if (vErrors === null) {
                        vErrors = [err18];
                      } else {
                        vErrors.push(err18);
                      }
                      errors++;
                    }
                  }
                } else {
                  const err19 = { instancePath: instancePath + "/bridges/" + i1 + "/through", schemaPath: "#/properties/bridges/items/properties/through/anyOf/1/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema17.properties.bridges.items.properties.through.anyOf[1].type, parentSchema: schema17.properties.bridges.items.properties.through.anyOf[1], data: data7 };
                  if (vErrors === null) {
                    vErrors = [err19];
                  } else {
                    vErrors.push(err19);
                  }
                  errors++;
                }
                var _valid0 = _errs16 === errors;
                valid6 = valid6 || _valid0;
              }
              if (!valid6) {
                const err20 = { instancePath: instancePath + "/bridges/" + i1 + "/through", schemaPath: "#/properties/bridges/items/properties/through/anyOf", keyword: "anyOf", params: {}, message: "must match a schema in anyOf", schema: schema17.properties.bridges.items.properties.through.anyOf, parentSchema: schema17.properties.bridges.items.properties.through, data: data7 };
                if (vErrors === null) {
                  vErrors = [err20];
                } else {
                  vErrors.push(err20);
                }
                errors++;
              } else {
                errors = _errs14;
                if (vErrors !== null) {
                  if (_errs14) {
                    vErrors.length = _errs14;
                  } else {
                    vErrors = null;
                  }
                }
              }
            }
          } else {
            const err21 = { instancePath: instancePath + "/bridges/" + i1, schemaPath: "#/properties/bridges/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema17.properties.bridges.items.type, parentSchema: schema17.properties.bridges.items, data: data4 };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
        }
      } else {
        const err22 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema17.properties.bridges.type, parentSchema: schema17.properties.bridges, data: data3 };
        if (vErrors === null) {
          vErrors = [err22];
        } else {
          vErrors.push(err22);
        }
        errors++;
      }
    }
    if (data.sensor !== void 0) {
      let data9 = data.sensor;
      if (!(data9 === "fitted" || data9 === "spare")) {
        const err23 = { instancePath: instancePath + "/sensor", schemaPath: "#/properties/sensor/enum", keyword: "enum", params: { allowedValues: schema17.properties.sensor.enum }, message: "must be equal to one of the allowed values", schema: schema17.properties.sensor.enum, parentSchema: schema17.properties.sensor, data: data9 };
        if (vErrors === null) {
          vErrors = [err23];
        } else {
          vErrors.push(err23);
        }
        errors++;
      }
    }
    if (data.target !== void 0) {
      let data10 = data.target;
      if (!(data10 === "still" || data10 === "moving")) {
        const err24 = { instancePath: instancePath + "/target", schemaPath: "#/properties/target/enum", keyword: "enum", params: { allowedValues: schema17.properties.target.enum }, message: "must be equal to one of the allowed values", schema: schema17.properties.target.enum, parentSchema: schema17.properties.target, data: data10 };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
  } else {
    const err25 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema17.type, parentSchema: schema17, data };
    if (vErrors === null) {
      vErrors = [err25];
    } else {
      vErrors.push(err25);
    }
    errors++;
  }
  validate37.errors = vErrors;
  return errors === 0;
}
var schema20 = { "title": "ProbeForm", "description": "Which instrument looks at what, as the session file has it.", "type": "object", "required": ["kind"], "discriminator": { "propertyName": "kind" }, "x-choices": ["volts", "ohms", "light", "lamp", "pattern", "timing", "amps", "counts", "inspect"], "oneOf": [{ "title": "TwoLeads", "type": "object", "required": ["kind", "plus", "minus"], "additionalProperties": false, "properties": { "kind": { "title": "Instrument", "description": "Which instrument.", "enum": ["volts", "ohms", "light", "lamp", "pattern", "timing", "amps"] }, "plus": { "title": "Red lead", "description": "Where it goes.", "$ref": "#/definitions/terminal" }, "minus": { "title": "Black lead", "description": "Where it goes.", "$ref": "#/definitions/terminal" } } }, { "title": "LiveData", "type": "object", "required": ["kind", "input"], "additionalProperties": false, "properties": { "kind": { "const": "counts" }, "input": { "title": "Input", "description": "Of the module, whose live data are read.", "$ref": "#/definitions/terminal" } } }, { "title": "EyesAndFingers", "type": "object", "required": ["kind", "of"], "additionalProperties": false, "properties": { "kind": { "const": "inspect" }, "of": { "title": "Thing", "description": "What is looked at.", "$ref": "#/definitions/terminal" } } }] };
function validate45(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.kind === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.required, parentSchema: schema20, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    const tag0 = data.kind;
    if (typeof tag0 == "string") {
      if (tag0 === "volts") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err1 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err1];
            } else {
              vErrors.push(err1);
            }
            errors++;
          }
          if (data.plus === void 0) {
            const err2 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "plus" }, message: "must have required property 'plus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
          if (data.minus === void 0) {
            const err3 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "minus" }, message: "must have required property 'minus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          for (const key0 in data) {
            if (!(key0 === "kind" || key0 === "plus" || key0 === "minus")) {
              const err4 = { instancePath, schemaPath: "#/oneOf/0/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[0], data };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data0 = data.kind;
            if (!(data0 === "volts" || data0 === "ohms" || data0 === "light" || data0 === "lamp" || data0 === "pattern" || data0 === "timing" || data0 === "amps")) {
              const err5 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/0/properties/kind/enum", keyword: "enum", params: { allowedValues: schema20.oneOf[0].properties.kind.enum }, message: "must be equal to one of the allowed values", schema: schema20.oneOf[0].properties.kind.enum, parentSchema: schema20.oneOf[0].properties.kind, data: data0 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
          }
          if (data.plus !== void 0) {
            if (!validate41(data.plus, { instancePath: instancePath + "/plus", parentData: data, parentDataProperty: "plus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
          if (data.minus !== void 0) {
            if (!validate41(data.minus, { instancePath: instancePath + "/minus", parentData: data, parentDataProperty: "minus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err6 = { instancePath, schemaPath: "#/oneOf/0/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[0].type, parentSchema: schema20.oneOf[0], data };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
      } else if (tag0 === "ohms") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err7 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
          if (data.plus === void 0) {
            const err8 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "plus" }, message: "must have required property 'plus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
          if (data.minus === void 0) {
            const err9 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "minus" }, message: "must have required property 'minus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
          for (const key1 in data) {
            if (!(key1 === "kind" || key1 === "plus" || key1 === "minus")) {
              const err10 = { instancePath, schemaPath: "#/oneOf/0/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[0], data };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data3 = data.kind;
            if (!(data3 === "volts" || data3 === "ohms" || data3 === "light" || data3 === "lamp" || data3 === "pattern" || data3 === "timing" || data3 === "amps")) {
              const err11 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/0/properties/kind/enum", keyword: "enum", params: { allowedValues: schema20.oneOf[0].properties.kind.enum }, message: "must be equal to one of the allowed values", schema: schema20.oneOf[0].properties.kind.enum, parentSchema: schema20.oneOf[0].properties.kind, data: data3 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
          }
          if (data.plus !== void 0) {
            if (!validate41(data.plus, { instancePath: instancePath + "/plus", parentData: data, parentDataProperty: "plus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
          if (data.minus !== void 0) {
            if (!validate41(data.minus, { instancePath: instancePath + "/minus", parentData: data, parentDataProperty: "minus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err12 = { instancePath, schemaPath: "#/oneOf/0/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[0].type, parentSchema: schema20.oneOf[0], data };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      } else if (tag0 === "light") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err13 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err13];
            } else {
              vErrors.push(err13);
            }
            errors++;
          }
          if (data.plus === void 0) {
            const err14 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "plus" }, message: "must have required property 'plus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
          if (data.minus === void 0) {
            const err15 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "minus" }, message: "must have required property 'minus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
          for (const key2 in data) {
            if (!(key2 === "kind" || key2 === "plus" || key2 === "minus")) {
              const err16 = { instancePath, schemaPath: "#/oneOf/0/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key2 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[0], data };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data6 = data.kind;
            if (!(data6 === "volts" || data6 === "ohms" || data6 === "light" || data6 === "lamp" || data6 === "pattern" || data6 === "timing" || data6 === "amps")) {
              const err17 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/0/properties/kind/enum", keyword: "enum", params: { allowedValues: schema20.oneOf[0].properties.kind.enum }, message: "must be equal to one of the allowed values", schema: schema20.oneOf[0].properties.kind.enum, parentSchema: schema20.oneOf[0].properties.kind, data: data6 };
              if (vErrors === null) {
                vErrors = [err17];
              } else {
                vErrors.push(err17);
              }
              errors++;
            }
          }
          if (data.plus !== void 0) {
            if (!validate41(data.plus, { instancePath: instancePath + "/plus", parentData: data, parentDataProperty: "plus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
          if (data.minus !== void 0) {
            if (!validate41(data.minus, { instancePath: instancePath + "/minus", parentData: data, parentDataProperty: "minus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err18 = { instancePath, schemaPath: "#/oneOf/0/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[0].type, parentSchema: schema20.oneOf[0], data };
          if (vErrors === null) {
            vErrors = [err18];
          } else {
            vErrors.push(err18);
          }
          errors++;
        }
      } else if (tag0 === "lamp") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err19 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err19];
            } else {
              vErrors.push(err19);
            }
            errors++;
          }
          if (data.plus === void 0) {
            const err20 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "plus" }, message: "must have required property 'plus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err20];
            } else {
              vErrors.push(err20);
            }
            errors++;
          }
          if (data.minus === void 0) {
            const err21 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "minus" }, message: "must have required property 'minus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err21];
            } else {
              vErrors.push(err21);
            }
            errors++;
          }
          for (const key3 in data) {
            if (!(key3 === "kind" || key3 === "plus" || key3 === "minus")) {
              const err22 = { instancePath, schemaPath: "#/oneOf/0/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key3 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[0], data };
              if (vErrors === null) {
                vErrors = [err22];
              } else {
                vErrors.push(err22);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data9 = data.kind;
            if (!(data9 === "volts" || data9 === "ohms" || data9 === "light" || data9 === "lamp" || data9 === "pattern" || data9 === "timing" || data9 === "amps")) {
              const err23 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/0/properties/kind/enum", keyword: "enum", params: { allowedValues: schema20.oneOf[0].properties.kind.enum }, message: "must be equal to one of the allowed values", schema: schema20.oneOf[0].properties.kind.enum, parentSchema: schema20.oneOf[0].properties.kind, data: data9 };
              if (vErrors === null) {
                vErrors = [err23];
              } else {
                vErrors.push(err23);
              }
              errors++;
            }
          }
          if (data.plus !== void 0) {
            if (!validate41(data.plus, { instancePath: instancePath + "/plus", parentData: data, parentDataProperty: "plus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
          if (data.minus !== void 0) {
            if (!validate41(data.minus, { instancePath: instancePath + "/minus", parentData: data, parentDataProperty: "minus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err24 = { instancePath, schemaPath: "#/oneOf/0/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[0].type, parentSchema: schema20.oneOf[0], data };
          if (vErrors === null) {
            vErrors = [err24];
          } else {
            vErrors.push(err24);
          }
          errors++;
        }
      } else if (tag0 === "pattern") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err25 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err25];
            } else {
              vErrors.push(err25);
            }
            errors++;
          }
          if (data.plus === void 0) {
            const err26 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "plus" }, message: "must have required property 'plus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err26];
            } else {
              vErrors.push(err26);
            }
            errors++;
          }
          if (data.minus === void 0) {
            const err27 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "minus" }, message: "must have required property 'minus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err27];
            } else {
              vErrors.push(err27);
            }
            errors++;
          }
          for (const key4 in data) {
            if (!(key4 === "kind" || key4 === "plus" || key4 === "minus")) {
              const err28 = { instancePath, schemaPath: "#/oneOf/0/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key4 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[0], data };
              if (vErrors === null) {
                vErrors = [err28];
              } else {
                vErrors.push(err28);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data12 = data.kind;
            if (!(data12 === "volts" || data12 === "ohms" || data12 === "light" || data12 === "lamp" || data12 === "pattern" || data12 === "timing" || data12 === "amps")) {
              const err29 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/0/properties/kind/enum", keyword: "enum", params: { allowedValues: schema20.oneOf[0].properties.kind.enum }, message: "must be equal to one of the allowed values", schema: schema20.oneOf[0].properties.kind.enum, parentSchema: schema20.oneOf[0].properties.kind, data: data12 };
              if (vErrors === null) {
                vErrors = [err29];
              } else {
                vErrors.push(err29);
              }
              errors++;
            }
          }
          if (data.plus !== void 0) {
            if (!validate41(data.plus, { instancePath: instancePath + "/plus", parentData: data, parentDataProperty: "plus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
          if (data.minus !== void 0) {
            if (!validate41(data.minus, { instancePath: instancePath + "/minus", parentData: data, parentDataProperty: "minus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err30 = { instancePath, schemaPath: "#/oneOf/0/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[0].type, parentSchema: schema20.oneOf[0], data };
          if (vErrors === null) {
            vErrors = [err30];
          } else {
            vErrors.push(err30);
          }
          errors++;
        }
      } else if (tag0 === "timing") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err31 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err31];
            } else {
              vErrors.push(err31);
            }
            errors++;
          }
          if (data.plus === void 0) {
            const err32 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "plus" }, message: "must have required property 'plus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err32];
            } else {
              vErrors.push(err32);
            }
            errors++;
          }
          if (data.minus === void 0) {
            const err33 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "minus" }, message: "must have required property 'minus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err33];
            } else {
              vErrors.push(err33);
            }
            errors++;
          }
          for (const key5 in data) {
            if (!(key5 === "kind" || key5 === "plus" || key5 === "minus")) {
              const err34 = { instancePath, schemaPath: "#/oneOf/0/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key5 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[0], data };
              if (vErrors === null) {
                vErrors = [err34];
              } else {
                vErrors.push(err34);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data15 = data.kind;
            if (!(data15 === "volts" || data15 === "ohms" || data15 === "light" || data15 === "lamp" || data15 === "pattern" || data15 === "timing" || data15 === "amps")) {
              const err35 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/0/properties/kind/enum", keyword: "enum", params: { allowedValues: schema20.oneOf[0].properties.kind.enum }, message: "must be equal to one of the allowed values", schema: schema20.oneOf[0].properties.kind.enum, parentSchema: schema20.oneOf[0].properties.kind, data: data15 };
              if (vErrors === null) {
                vErrors = [err35];
              } else {
                vErrors.push(err35);
              }
              errors++;
            }
          }
          if (data.plus !== void 0) {
            if (!validate41(data.plus, { instancePath: instancePath + "/plus", parentData: data, parentDataProperty: "plus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
          if (data.minus !== void 0) {
            if (!validate41(data.minus, { instancePath: instancePath + "/minus", parentData: data, parentDataProperty: "minus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err36 = { instancePath, schemaPath: "#/oneOf/0/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[0].type, parentSchema: schema20.oneOf[0], data };
          if (vErrors === null) {
            vErrors = [err36];
          } else {
            vErrors.push(err36);
          }
          errors++;
        }
      } else if (tag0 === "amps") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err37 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err37];
            } else {
              vErrors.push(err37);
            }
            errors++;
          }
          if (data.plus === void 0) {
            const err38 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "plus" }, message: "must have required property 'plus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err38];
            } else {
              vErrors.push(err38);
            }
            errors++;
          }
          if (data.minus === void 0) {
            const err39 = { instancePath, schemaPath: "#/oneOf/0/required", keyword: "required", params: { missingProperty: "minus" }, message: "must have required property 'minus'", schema: schema20.oneOf[0].required, parentSchema: schema20.oneOf[0], data };
            if (vErrors === null) {
              vErrors = [err39];
            } else {
              vErrors.push(err39);
            }
            errors++;
          }
          for (const key6 in data) {
            if (!(key6 === "kind" || key6 === "plus" || key6 === "minus")) {
              const err40 = { instancePath, schemaPath: "#/oneOf/0/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key6 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[0], data };
              if (vErrors === null) {
                vErrors = [err40];
              } else {
                vErrors.push(err40);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data18 = data.kind;
            if (!(data18 === "volts" || data18 === "ohms" || data18 === "light" || data18 === "lamp" || data18 === "pattern" || data18 === "timing" || data18 === "amps")) {
              const err41 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/0/properties/kind/enum", keyword: "enum", params: { allowedValues: schema20.oneOf[0].properties.kind.enum }, message: "must be equal to one of the allowed values", schema: schema20.oneOf[0].properties.kind.enum, parentSchema: schema20.oneOf[0].properties.kind, data: data18 };
              if (vErrors === null) {
                vErrors = [err41];
              } else {
                vErrors.push(err41);
              }
              errors++;
            }
          }
          if (data.plus !== void 0) {
            if (!validate41(data.plus, { instancePath: instancePath + "/plus", parentData: data, parentDataProperty: "plus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
          if (data.minus !== void 0) {
            if (!validate41(data.minus, { instancePath: instancePath + "/minus", parentData: data, parentDataProperty: "minus", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err42 = { instancePath, schemaPath: "#/oneOf/0/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[0].type, parentSchema: schema20.oneOf[0], data };
          if (vErrors === null) {
            vErrors = [err42];
          } else {
            vErrors.push(err42);
          }
          errors++;
        }
      } else if (tag0 === "counts") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err43 = { instancePath, schemaPath: "#/oneOf/1/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[1].required, parentSchema: schema20.oneOf[1], data };
            if (vErrors === null) {
              vErrors = [err43];
            } else {
              vErrors.push(err43);
            }
            errors++;
          }
          if (data.input === void 0) {
            const err44 = { instancePath, schemaPath: "#/oneOf/1/required", keyword: "required", params: { missingProperty: "input" }, message: "must have required property 'input'", schema: schema20.oneOf[1].required, parentSchema: schema20.oneOf[1], data };
            if (vErrors === null) {
              vErrors = [err44];
            } else {
              vErrors.push(err44);
            }
            errors++;
          }
          for (const key7 in data) {
            if (!(key7 === "kind" || key7 === "input")) {
              const err45 = { instancePath, schemaPath: "#/oneOf/1/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key7 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[1], data };
              if (vErrors === null) {
                vErrors = [err45];
              } else {
                vErrors.push(err45);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data21 = data.kind;
            if ("counts" !== data21) {
              const err46 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/1/properties/kind/const", keyword: "const", params: { allowedValue: "counts" }, message: "must be equal to constant", schema: "counts", parentSchema: schema20.oneOf[1].properties.kind, data: data21 };
              if (vErrors === null) {
                vErrors = [err46];
              } else {
                vErrors.push(err46);
              }
              errors++;
            }
          }
          if (data.input !== void 0) {
            if (!validate41(data.input, { instancePath: instancePath + "/input", parentData: data, parentDataProperty: "input", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err47 = { instancePath, schemaPath: "#/oneOf/1/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[1].type, parentSchema: schema20.oneOf[1], data };
          if (vErrors === null) {
            vErrors = [err47];
          } else {
            vErrors.push(err47);
          }
          errors++;
        }
      } else if (tag0 === "inspect") {
        if (data && typeof data == "object" && !Array.isArray(data)) {
          if (data.kind === void 0) {
            const err48 = { instancePath, schemaPath: "#/oneOf/2/required", keyword: "required", params: { missingProperty: "kind" }, message: "must have required property 'kind'", schema: schema20.oneOf[2].required, parentSchema: schema20.oneOf[2], data };
            if (vErrors === null) {
              vErrors = [err48];
            } else {
              vErrors.push(err48);
            }
            errors++;
          }
          if (data.of === void 0) {
            const err49 = { instancePath, schemaPath: "#/oneOf/2/required", keyword: "required", params: { missingProperty: "of" }, message: "must have required property 'of'", schema: schema20.oneOf[2].required, parentSchema: schema20.oneOf[2], data };
            if (vErrors === null) {
              vErrors = [err49];
            } else {
              vErrors.push(err49);
            }
            errors++;
          }
          for (const key8 in data) {
            if (!(key8 === "kind" || key8 === "of")) {
              const err50 = { instancePath, schemaPath: "#/oneOf/2/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key8 }, message: "must NOT have additional properties", schema: false, parentSchema: schema20.oneOf[2], data };
              if (vErrors === null) {
                vErrors = [err50];
              } else {
                vErrors.push(err50);
              }
              errors++;
            }
          }
          if (data.kind !== void 0) {
            let data23 = data.kind;
            if ("inspect" !== data23) {
              const err51 = { instancePath: instancePath + "/kind", schemaPath: "#/oneOf/2/properties/kind/const", keyword: "const", params: { allowedValue: "inspect" }, message: "must be equal to constant", schema: "inspect", parentSchema: schema20.oneOf[2].properties.kind, data: data23 };
              if (vErrors === null) {
                vErrors = [err51];
              } else {
                vErrors.push(err51);
              }
              errors++;
            }
          }
          if (data.of !== void 0) {
            if (!validate41(data.of, { instancePath: instancePath + "/of", parentData: data, parentDataProperty: "of", rootData })) {
              vErrors = vErrors === null ? validate41.errors : vErrors.concat(validate41.errors);
              errors = vErrors.length;
            }
          }
        } else {
          const err52 = { instancePath, schemaPath: "#/oneOf/2/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.oneOf[2].type, parentSchema: schema20.oneOf[2], data };
          if (vErrors === null) {
            vErrors = [err52];
          } else {
            vErrors.push(err52);
          }
          errors++;
        }
      } else {
        const err53 = { instancePath, schemaPath: "#/discriminator", keyword: "discriminator", params: { error: "mapping", tag: "kind", tagValue: tag0 }, message: 'value of tag "kind" must be in oneOf', schema: schema20.discriminator, parentSchema: schema20, data };
        if (vErrors === null) {
          vErrors = [err53];
        } else {
          vErrors.push(err53);
        }
        errors++;
      }
    } else {
      const err54 = { instancePath, schemaPath: "#/discriminator", keyword: "discriminator", params: { error: "tag", tag: "kind", tagValue: tag0 }, message: 'tag "kind" must be string', schema: schema20.discriminator, parentSchema: schema20, data };
      if (vErrors === null) {
        vErrors = [err54];
      } else {
        vErrors.push(err54);
      }
      errors++;
    }
  } else {
    const err55 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema20.type, parentSchema: schema20, data };
    if (vErrors === null) {
      vErrors = [err55];
    } else {
      vErrors.push(err55);
    }
    errors++;
  }
  validate45.errors = vErrors;
  return errors === 0;
}
function validate36(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (Object.keys(data).length < 1) {
      const err0 = { instancePath, schemaPath: "#/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema16, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!func13.call(schema16.properties, key0)) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema16, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.setup !== void 0) {
      if (data.probe === void 0) {
        const err2 = { instancePath, schemaPath: "#/dependencies", keyword: "dependencies", params: {
          property: "setup",
          missingProperty: "probe",
          depsCount: 1,
          deps: "probe"
        }, message: "must have property probe when property setup is present", schema: schema16.dependencies, parentSchema: schema16, data };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.probe !== void 0) {
      if (data.setup === void 0) {
        const err3 = { instancePath, schemaPath: "#/dependencies", keyword: "dependencies", params: {
          property: "probe",
          missingProperty: "setup",
          depsCount: 1,
          deps: "setup"
        }, message: "must have property setup when property probe is present", schema: schema16.dependencies, parentSchema: schema16, data };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.setup !== void 0) {
      if (!validate37(data.setup, { instancePath: instancePath + "/setup", parentData: data, parentDataProperty: "setup", rootData })) {
        vErrors = vErrors === null ? validate37.errors : vErrors.concat(validate37.errors);
        errors = vErrors.length;
      }
    }
    if (data.probe !== void 0) {
      if (!validate45(data.probe, { instancePath: instancePath + "/probe", parentData: data, parentDataProperty: "probe", rootData })) {
        vErrors = vErrors === null ? validate45.errors : vErrors.concat(validate45.errors);
        errors = vErrors.length;
      }
    }
    if (data.measure !== void 0) {
      let data2 = data.measure;
      if (typeof data2 === "string") {
        if (func2(data2) > 200) {
          const err4 = { instancePath: instancePath + "/measure", schemaPath: "#/properties/measure/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema16.properties.measure, data: data2 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        if (func2(data2) < 1) {
          const err5 = { instancePath: instancePath + "/measure", schemaPath: "#/properties/measure/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema16.properties.measure, data: data2 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
      } else {
        const err6 = { instancePath: instancePath + "/measure", schemaPath: "#/properties/measure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema16.properties.measure.type, parentSchema: schema16.properties.measure, data: data2 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
    if (data.capture !== void 0) {
      let data3 = data.capture;
      if (typeof data3 === "string") {
        if (func2(data3) > 200) {
          const err7 = { instancePath: instancePath + "/capture", schemaPath: "#/properties/capture/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema16.properties.capture, data: data3 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
        if (func2(data3) < 1) {
          const err8 = { instancePath: instancePath + "/capture", schemaPath: "#/properties/capture/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema16.properties.capture, data: data3 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
      } else {
        const err9 = { instancePath: instancePath + "/capture", schemaPath: "#/properties/capture/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema16.properties.capture.type, parentSchema: schema16.properties.capture, data: data3 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.test !== void 0) {
      let data4 = data.test;
      if (typeof data4 === "string") {
        if (func2(data4) > 200) {
          const err10 = { instancePath: instancePath + "/test", schemaPath: "#/properties/test/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema16.properties.test, data: data4 };
          if (vErrors === null) {
            vErrors = [err10];
          } else {
            vErrors.push(err10);
          }
          errors++;
        }
        if (func2(data4) < 1) {
          const err11 = { instancePath: instancePath + "/test", schemaPath: "#/properties/test/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema16.properties.test, data: data4 };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
      } else {
        const err12 = { instancePath: instancePath + "/test", schemaPath: "#/properties/test/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema16.properties.test.type, parentSchema: schema16.properties.test, data: data4 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
    if (data.state !== void 0) {
      if (!validate38(data.state, { instancePath: instancePath + "/state", parentData: data, parentDataProperty: "state", rootData })) {
        vErrors = vErrors === null ? validate38.errors : vErrors.concat(validate38.errors);
        errors = vErrors.length;
      }
    }
    if (data.unplug !== void 0) {
      let data6 = data.unplug;
      if (Array.isArray(data6)) {
        if (data6.length > 20) {
          const err13 = { instancePath: instancePath + "/unplug", schemaPath: "#/properties/unplug/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema16.properties.unplug, data: data6 };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
        const len0 = data6.length;
        for (let i0 = 0; i0 < len0; i0++) {
          if (!validate28(data6[i0], { instancePath: instancePath + "/unplug/" + i0, parentData: data6, parentDataProperty: i0, rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err14 = { instancePath: instancePath + "/unplug", schemaPath: "#/properties/unplug/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema16.properties.unplug.type, parentSchema: schema16.properties.unplug, data: data6 };
        if (vErrors === null) {
          vErrors = [err14];
        } else {
          vErrors.push(err14);
        }
        errors++;
      }
    }
    if (data.bridges !== void 0) {
      let data8 = data.bridges;
      if (Array.isArray(data8)) {
        if (data8.length > 6) {
          const err15 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/maxItems", keyword: "maxItems", params: { limit: 6 }, message: "must NOT have more than 6 items", schema: 6, parentSchema: schema16.properties.bridges, data: data8 };
          if (vErrors === null) {
            vErrors = [err15];
          } else {
            vErrors.push(err15);
          }
          errors++;
        }
        const len1 = data8.length;
        for (let i1 = 0; i1 < len1; i1++) {
          let data9 = data8[i1];
          if (typeof data9 === "string") {
            if (func2(data9) > 200) {
              const err16 = { instancePath: instancePath + "/bridges/" + i1, schemaPath: "#/properties/bridges/items/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema16.properties.bridges.items, data: data9 };
              if (vErrors === null) {
                vErrors = [err16];
              } else {
                vErrors.push(err16);
              }
              errors++;
            }
          } else {
            const err17 = { instancePath: instancePath + "/bridges/" + i1, schemaPath: "#/properties/bridges/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema16.properties.bridges.items.type, parentSchema: schema16.properties.bridges.items, data: data9 };
            if (vErrors === null) {
              vErrors = [err17];
            } else {
              vErrors.push(err17);
            }
            errors++;
          }
        }
      } else {
        const err18 = { instancePath: instancePath + "/bridges", schemaPath: "#/properties/bridges/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema16.properties.bridges.type, parentSchema: schema16.properties.bridges, data: data8 };
        if (vErrors === null) {
          vErrors = [err18];
        } else {
          vErrors.push(err18);
        }
        errors++;
      }
    }
    if (data.spare !== void 0) {
      let data10 = data.spare;
      if (typeof data10 !== "boolean") {
        const err19 = { instancePath: instancePath + "/spare", schemaPath: "#/properties/spare/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema16.properties.spare.type, parentSchema: schema16.properties.spare, data: data10 };
        if (vErrors === null) {
          vErrors = [err19];
        } else {
          vErrors.push(err19);
        }
        errors++;
      }
    }
    if (data.moving !== void 0) {
      let data11 = data.moving;
      if (typeof data11 !== "boolean") {
        const err20 = { instancePath: instancePath + "/moving", schemaPath: "#/properties/moving/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema16.properties.moving.type, parentSchema: schema16.properties.moving, data: data11 };
        if (vErrors === null) {
          vErrors = [err20];
        } else {
          vErrors.push(err20);
        }
        errors++;
      }
    }
    if (data.wiggle !== void 0) {
      let data12 = data.wiggle;
      if (typeof data12 !== "boolean") {
        const err21 = { instancePath: instancePath + "/wiggle", schemaPath: "#/properties/wiggle/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema16.properties.wiggle.type, parentSchema: schema16.properties.wiggle, data: data12 };
        if (vErrors === null) {
          vErrors = [err21];
        } else {
          vErrors.push(err21);
        }
        errors++;
      }
    }
  } else {
    const err22 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema16.type, parentSchema: schema16, data };
    if (vErrors === null) {
      vErrors = [err22];
    } else {
      vErrors.push(err22);
    }
    errors++;
  }
  validate36.errors = vErrors;
  return errors === 0;
}
var pattern0 = new RegExp("\\S", "u");
function validate33(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema15.required, parentSchema: schema15, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema15.required, parentSchema: schema15, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("acknowledge" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "acknowledge" }, message: "must be equal to constant", schema: "acknowledge", parentSchema: schema15.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.caution === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "caution" }, message: "must have required property 'caution'", schema: schema15.properties.params.required, parentSchema: schema15.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (data1.person === void 0) {
          const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "person" }, message: "must have required property 'person'", schema: schema15.properties.params.required, parentSchema: schema15.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "caution" || key0 === "person" || key0 === "step" || key0 === "test")) {
            const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema15.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.caution !== void 0) {
          let data2 = data1.caution;
          if (typeof data2 !== "string" && !Array.isArray(data2)) {
            const err6 = { instancePath: instancePath + "/params/caution", schemaPath: "#/properties/params/properties/caution/type", keyword: "type", params: { type: schema15.properties.params.properties.caution.type }, message: "must be string,array", schema: schema15.properties.params.properties.caution.type, parentSchema: schema15.properties.params.properties.caution, data: data2 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
          if (typeof data2 === "string") {
            if (func2(data2) > 200) {
              const err7 = { instancePath: instancePath + "/params/caution", schemaPath: "#/properties/params/properties/caution/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema15.properties.params.properties.caution, data: data2 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err8 = { instancePath: instancePath + "/params/caution", schemaPath: "#/properties/params/properties/caution/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema15.properties.params.properties.caution, data: data2 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          }
          if (Array.isArray(data2)) {
            if (data2.length > 40) {
              const err9 = { instancePath: instancePath + "/params/caution", schemaPath: "#/properties/params/properties/caution/maxItems", keyword: "maxItems", params: { limit: 40 }, message: "must NOT have more than 40 items", schema: 40, parentSchema: schema15.properties.params.properties.caution, data: data2 };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
            if (data2.length < 1) {
              const err10 = { instancePath: instancePath + "/params/caution", schemaPath: "#/properties/params/properties/caution/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema15.properties.params.properties.caution, data: data2 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
            const len0 = data2.length;
            for (let i0 = 0; i0 < len0; i0++) {
              if (!validate28(data2[i0], { instancePath: instancePath + "/params/caution/" + i0, parentData: data2, parentDataProperty: i0, rootData })) {
                vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
                errors = vErrors.length;
              }
            }
            let i1 = data2.length;
            let j0;
            if (i1 > 1) {
              outer0: for (; i1--; ) {
                for (j0 = i1; j0--; ) {
                  if (func0(data2[i1], data2[j0])) {
                    const err11 = { instancePath: instancePath + "/params/caution", schemaPath: "#/properties/params/properties/caution/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)", schema: true, parentSchema: schema15.properties.params.properties.caution, data: data2 };
                    if (vErrors === null) {
                      vErrors = [err11];
                    } else {
                      vErrors.push(err11);
                    }
                    errors++;
                    break outer0;
                  }
                }
              }
            }
          }
        }
        if (data1.person !== void 0) {
          let data4 = data1.person;
          if (typeof data4 === "string") {
            if (func2(data4) > 200) {
              const err12 = { instancePath: instancePath + "/params/person", schemaPath: "#/properties/params/properties/person/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema15.properties.params.properties.person, data: data4 };
              if (vErrors === null) {
                vErrors = [err12];
              } else {
                vErrors.push(err12);
              }
              errors++;
            }
            if (!pattern0.test(data4)) {
              const err13 = { instancePath: instancePath + "/params/person", schemaPath: "#/properties/params/properties/person/pattern", keyword: "pattern", params: { pattern: "\\S" }, message: 'must match pattern "\\S"', schema: "\\S", parentSchema: schema15.properties.params.properties.person, data: data4 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
          } else {
            const err14 = { instancePath: instancePath + "/params/person", schemaPath: "#/properties/params/properties/person/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema15.properties.params.properties.person.type, parentSchema: schema15.properties.params.properties.person, data: data4 };
            if (vErrors === null) {
              vErrors = [err14];
            } else {
              vErrors.push(err14);
            }
            errors++;
          }
        }
        if (data1.step !== void 0) {
          if (!validate28(data1.step, { instancePath: instancePath + "/params/step", parentData: data1, parentDataProperty: "step", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.test !== void 0) {
          if (!validate36(data1.test, { instancePath: instancePath + "/params/test", parentData: data1, parentDataProperty: "test", rootData })) {
            vErrors = vErrors === null ? validate36.errors : vErrors.concat(validate36.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err15 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema15.properties.params.type, parentSchema: schema15.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
  } else {
    const err16 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema15.type, parentSchema: schema15, data };
    if (vErrors === null) {
      vErrors = [err16];
    } else {
      vErrors.push(err16);
    }
    errors++;
  }
  validate33.errors = vErrors;
  return errors === 0;
}
var schema21 = { "title": "Reading", "description": "Answers the present step with a number.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "reading" }, "params": { "title": "ReadingParameters", "description": "What was read.", "type": "object", "required": ["reading"], "additionalProperties": false, "properties": { "reading": { "title": "Reading", "description": "As a person types it.", "$ref": "#/definitions/readingText" }, "sure": { "title": "Sure", "description": "The meter really shows this, though it looks like a slip.", "type": "boolean" } } } } };
var schema22 = { "title": "ReadingText", "description": "As a person types it: 4.98 V, 2.2k, OL. A number alone is in the unit that is asked for.", "type": ["string", "number"], "maxLength": 200, "examples": ["4.98 V"] };
function validate67(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (typeof data !== "string" && !(typeof data == "number" && isFinite(data))) {
    const err0 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: schema22.type }, message: "must be string,number", schema: schema22.type, parentSchema: schema22, data };
    if (vErrors === null) {
      vErrors = [err0];
    } else {
      vErrors.push(err0);
    }
    errors++;
  }
  if (typeof data === "string") {
    if (func2(data) > 200) {
      const err1 = { instancePath, schemaPath: "#/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema22, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
  }
  validate67.errors = vErrors;
  return errors === 0;
}
function validate66(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema21.required, parentSchema: schema21, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema21.required, parentSchema: schema21, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("reading" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "reading" }, message: "must be equal to constant", schema: "reading", parentSchema: schema21.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.reading === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "reading" }, message: "must have required property 'reading'", schema: schema21.properties.params.required, parentSchema: schema21.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "reading" || key0 === "sure")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema21.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.reading !== void 0) {
          if (!validate67(data1.reading, { instancePath: instancePath + "/params/reading", parentData: data1, parentDataProperty: "reading", rootData })) {
            vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
            errors = vErrors.length;
          }
        }
        if (data1.sure !== void 0) {
          let data3 = data1.sure;
          if (typeof data3 !== "boolean") {
            const err5 = { instancePath: instancePath + "/params/sure", schemaPath: "#/properties/params/properties/sure/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema21.properties.params.properties.sure.type, parentSchema: schema21.properties.params.properties.sure, data: data3 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema21.properties.params.type, parentSchema: schema21.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema21.type, parentSchema: schema21, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate66.errors = vErrors;
  return errors === 0;
}
var schema23 = { "title": "Choose", "description": "Answers the present step with an outcome, or with what was seen.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "choose" }, "params": { "title": "ChooseParameters", "description": "Which.", "type": "object", "required": ["choose"], "additionalProperties": false, "properties": { "choose": { "title": "Choice", "description": "Name of an outcome, or of a look.", "$ref": "#/definitions/name" } } } } };
function validate69(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema23.required, parentSchema: schema23, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema23.required, parentSchema: schema23, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("choose" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "choose" }, message: "must be equal to constant", schema: "choose", parentSchema: schema23.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.choose === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "choose" }, message: "must have required property 'choose'", schema: schema23.properties.params.required, parentSchema: schema23.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "choose")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema23.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.choose !== void 0) {
          if (!validate28(data1.choose, { instancePath: instancePath + "/params/choose", parentData: data1, parentDataProperty: "choose", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.properties.params.type, parentSchema: schema23.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema23.type, parentSchema: schema23, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate69.errors = vErrors;
  return errors === 0;
}
var schema24 = { "title": "Done", "description": "What the present step asks for is done.", "type": "object", "required": ["method"], "properties": { "method": { "const": "done" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate71(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema24.required, parentSchema: schema24, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("done" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "done" }, message: "must be equal to constant", schema: "done", parentSchema: schema24.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema24.type, parentSchema: schema24, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate71.errors = vErrors;
  return errors === 0;
}
var schema25 = { "title": "Take", "description": "Answers the present step with what the simulated vehicle shows.", "type": "object", "required": ["method"], "properties": { "method": { "const": "take" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate73(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema25.required, parentSchema: schema25, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("take" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "take" }, message: "must be equal to constant", schema: "take", parentSchema: schema25.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema25.type, parentSchema: schema25, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate73.errors = vErrors;
  return errors === 0;
}
var schema26 = { "title": "Cannot", "description": "The present step cannot be done here.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "cannot" }, "params": { "title": "CannotParameters", "description": "Why.", "type": "object", "required": ["reason"], "additionalProperties": false, "properties": { "reason": { "title": "Reason", "description": "In a few words.", "$ref": "#/definitions/text" } } } } };
var schema27 = { "type": "string", "minLength": 1, "maxLength": 2e3 };
function validate76(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (typeof data === "string") {
    if (func2(data) > 2e3) {
      const err0 = { instancePath, schemaPath: "#/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema27, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (func2(data) < 1) {
      const err1 = { instancePath, schemaPath: "#/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema27, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema27.type, parentSchema: schema27, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate76.errors = vErrors;
  return errors === 0;
}
function validate75(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema26.required, parentSchema: schema26, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema26.required, parentSchema: schema26, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("cannot" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "cannot" }, message: "must be equal to constant", schema: "cannot", parentSchema: schema26.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.reason === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "reason" }, message: "must have required property 'reason'", schema: schema26.properties.params.required, parentSchema: schema26.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "reason")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema26.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.reason !== void 0) {
          if (!validate76(data1.reason, { instancePath: instancePath + "/params/reason", parentData: data1, parentDataProperty: "reason", rootData })) {
            vErrors = vErrors === null ? validate76.errors : vErrors.concat(validate76.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema26.properties.params.type, parentSchema: schema26.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema26.type, parentSchema: schema26, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate75.errors = vErrors;
  return errors === 0;
}
var schema28 = { "title": "Prepare", "description": "What a test would be: its words and minutes, what it takes, what is good, its cautions, and what the simulated vehicle shows. Nothing is done.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "prepare" }, "params": { "title": "PrepareParameters", "description": "Which.", "type": "object", "required": ["test"], "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Any test on this circuit.", "$ref": "#/definitions/testForm" } } } } };
function validate78(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema28.required, parentSchema: schema28, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema28.required, parentSchema: schema28, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("prepare" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "prepare" }, message: "must be equal to constant", schema: "prepare", parentSchema: schema28.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.test === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "test" }, message: "must have required property 'test'", schema: schema28.properties.params.required, parentSchema: schema28.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "test")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema28.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.test !== void 0) {
          if (!validate36(data1.test, { instancePath: instancePath + "/params/test", parentData: data1, parentDataProperty: "test", rootData })) {
            vErrors = vErrors === null ? validate36.errors : vErrors.concat(validate36.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema28.properties.params.type, parentSchema: schema28.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema28.type, parentSchema: schema28, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate78.errors = vErrors;
  return errors === 0;
}
var schema29 = { "title": "Tests", "description": "The tests of the procedure and the usual ones of the circuit.", "type": "object", "required": ["method"], "properties": { "method": { "const": "tests" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate80(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema29.required, parentSchema: schema29, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("tests" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "tests" }, message: "must be equal to constant", schema: "tests", parentSchema: schema29.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema29.type, parentSchema: schema29, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate80.errors = vErrors;
  return errors === 0;
}
var schema30 = { "title": "Test", "description": "Records a test that no step asks for, at any time.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "test" }, "params": { "title": "TestParameters", "description": "Which test, and one of reading, choose and take.", "type": "object", "required": ["test"], "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Any test on this circuit.", "$ref": "#/definitions/testForm" }, "reading": { "title": "Reading", "description": "What the meter showed.", "$ref": "#/definitions/readingText" }, "choose": { "title": "Choice", "description": "What was seen: name of a look.", "$ref": "#/definitions/name" }, "take": { "title": "Take", "description": "What the simulated vehicle shows.", "type": "boolean" }, "sure": { "title": "Sure", "description": "The meter really shows this, though it looks like a slip.", "type": "boolean" }, "made": { "title": "When it was made", "description": "Of one that was made already; no cautions then.", "type": "string", "pattern": "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$", "examples": ["before the job", "14:05"] }, "note": { "title": "Note", "description": "A remark on it.", "$ref": "#/definitions/text" } } } } };
var pattern1 = new RegExp("^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$", "u");
function validate82(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema30.required, parentSchema: schema30, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema30.required, parentSchema: schema30, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("test" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "test" }, message: "must be equal to constant", schema: "test", parentSchema: schema30.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.test === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "test" }, message: "must have required property 'test'", schema: schema30.properties.params.required, parentSchema: schema30.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "test" || key0 === "reading" || key0 === "choose" || key0 === "take" || key0 === "sure" || key0 === "made" || key0 === "note")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema30.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.test !== void 0) {
          if (!validate36(data1.test, { instancePath: instancePath + "/params/test", parentData: data1, parentDataProperty: "test", rootData })) {
            vErrors = vErrors === null ? validate36.errors : vErrors.concat(validate36.errors);
            errors = vErrors.length;
          }
        }
        if (data1.reading !== void 0) {
          if (!validate67(data1.reading, { instancePath: instancePath + "/params/reading", parentData: data1, parentDataProperty: "reading", rootData })) {
            vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
            errors = vErrors.length;
          }
        }
        if (data1.choose !== void 0) {
          if (!validate28(data1.choose, { instancePath: instancePath + "/params/choose", parentData: data1, parentDataProperty: "choose", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.take !== void 0) {
          let data5 = data1.take;
          if (typeof data5 !== "boolean") {
            const err5 = { instancePath: instancePath + "/params/take", schemaPath: "#/properties/params/properties/take/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema30.properties.params.properties.take.type, parentSchema: schema30.properties.params.properties.take, data: data5 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.sure !== void 0) {
          let data6 = data1.sure;
          if (typeof data6 !== "boolean") {
            const err6 = { instancePath: instancePath + "/params/sure", schemaPath: "#/properties/params/properties/sure/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema30.properties.params.properties.sure.type, parentSchema: schema30.properties.params.properties.sure, data: data6 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
        if (data1.made !== void 0) {
          let data7 = data1.made;
          if (typeof data7 === "string") {
            if (!pattern1.test(data7)) {
              const err7 = { instancePath: instancePath + "/params/made", schemaPath: "#/properties/params/properties/made/pattern", keyword: "pattern", params: { pattern: "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$" }, message: 'must match pattern "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$"', schema: "^(before the job|([01][0-9]|2[0-3]):[0-5][0-9])$", parentSchema: schema30.properties.params.properties.made, data: data7 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
          } else {
            const err8 = { instancePath: instancePath + "/params/made", schemaPath: "#/properties/params/properties/made/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema30.properties.params.properties.made.type, parentSchema: schema30.properties.params.properties.made, data: data7 };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
        if (data1.note !== void 0) {
          if (!validate76(data1.note, { instancePath: instancePath + "/params/note", parentData: data1, parentDataProperty: "note", rootData })) {
            vErrors = vErrors === null ? validate76.errors : vErrors.concat(validate76.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err9 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema30.properties.params.type, parentSchema: schema30.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
  } else {
    const err10 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema30.type, parentSchema: schema30, data };
    if (vErrors === null) {
      vErrors = [err10];
    } else {
      vErrors.push(err10);
    }
    errors++;
  }
  validate82.errors = vErrors;
  return errors === 0;
}
var schema31 = { "title": "Note", "description": "Writes a note.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "note" }, "params": { "title": "NoteParameters", "description": "What.", "type": "object", "required": ["text"], "additionalProperties": false, "properties": { "text": { "title": "Text", "description": "A remark that goes into the record.", "$ref": "#/definitions/text" } } } } };
function validate87(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema31.required, parentSchema: schema31, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema31.required, parentSchema: schema31, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("note" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "note" }, message: "must be equal to constant", schema: "note", parentSchema: schema31.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.text === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "text" }, message: "must have required property 'text'", schema: schema31.properties.params.required, parentSchema: schema31.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "text")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema31.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.text !== void 0) {
          if (!validate76(data1.text, { instancePath: instancePath + "/params/text", parentData: data1, parentDataProperty: "text", rootData })) {
            vErrors = vErrors === null ? validate76.errors : vErrors.concat(validate76.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema31.properties.params.type, parentSchema: schema31.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema31.type, parentSchema: schema31, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate87.errors = vErrors;
  return errors === 0;
}
var schema32 = { "title": "Back", "description": "Takes back an answer, and a conclusion with it; or the value that was set last, where that was done last.", "type": "object", "required": ["method"], "properties": { "method": { "const": "back" }, "params": { "title": "BackParameters", "description": "The last answer when left out.", "type": "object", "additionalProperties": false, "properties": { "to": { "title": "To", "description": "Place in the path of the state, from 0.", "type": "integer", "minimum": 0 } } } } };
function validate89(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema32.required, parentSchema: schema32, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("back" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "back" }, message: "must be equal to constant", schema: "back", parentSchema: schema32.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "to")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema32.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.to !== void 0) {
          let data2 = data1.to;
          if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
            const err3 = { instancePath: instancePath + "/params/to", schemaPath: "#/properties/params/properties/to/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema32.properties.params.properties.to.type, parentSchema: schema32.properties.params.properties.to, data: data2 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          if (typeof data2 == "number" && isFinite(data2)) {
            if (data2 < 0 || isNaN(data2)) {
              const err4 = { instancePath: instancePath + "/params/to", schemaPath: "#/properties/params/properties/to/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema32.properties.params.properties.to, data: data2 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema32.properties.params.type, parentSchema: schema32.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema32.type, parentSchema: schema32, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate89.errors = vErrors;
  return errors === 0;
}
var schema33 = { "title": "Values", "description": "What can be known of this car, what is known of it, and what the readings have shown.", "type": "object", "required": ["method"], "properties": { "method": { "const": "values" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate90(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema33.required, parentSchema: schema33, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("values" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "values" }, message: "must be equal to constant", schema: "values", parentSchema: schema33.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema33.type, parentSchema: schema33, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate90.errors = vErrors;
  return errors === 0;
}
var schema34 = { "title": "SetValue", "description": "Sets a value of this car; all readings are weighed with it. Until the conclusion.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "set-value" }, "params": { "title": "SetValueParameters", "description": "What, its value, and from where.", "type": "object", "required": ["quantity", "is", "from"], "additionalProperties": false, "properties": { "quantity": { "title": "Quantity", "description": "Its key in the answer to values, or its words.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["module.reference.volts"] }, "is": { "title": "Is", "description": "A value as in a circuit file, one of its ways, or unknown for not known after all.", "type": "string", "minLength": 1, "maxLength": 400, "examples": ["8 V +/- 3 %", "battery"] }, "from": { "title": "From", "description": "maker, measured, label or other; then words of one's own.", "type": "string", "minLength": 1, "maxLength": 300, "examples": ["measured"] } } } } };
function validate92(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema34.required, parentSchema: schema34, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema34.required, parentSchema: schema34, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("set-value" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "set-value" }, message: "must be equal to constant", schema: "set-value", parentSchema: schema34.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.quantity === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "quantity" }, message: "must have required property 'quantity'", schema: schema34.properties.params.required, parentSchema: schema34.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (data1.is === void 0) {
          const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "is" }, message: "must have required property 'is'", schema: schema34.properties.params.required, parentSchema: schema34.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        if (data1.from === void 0) {
          const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "from" }, message: "must have required property 'from'", schema: schema34.properties.params.required, parentSchema: schema34.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "quantity" || key0 === "is" || key0 === "from")) {
            const err6 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema34.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
        if (data1.quantity !== void 0) {
          let data2 = data1.quantity;
          if (typeof data2 === "string") {
            if (func2(data2) > 200) {
              const err7 = { instancePath: instancePath + "/params/quantity", schemaPath: "#/properties/params/properties/quantity/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema34.properties.params.properties.quantity, data: data2 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err8 = { instancePath: instancePath + "/params/quantity", schemaPath: "#/properties/params/properties/quantity/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema34.properties.params.properties.quantity, data: data2 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          } else {
            const err9 = { instancePath: instancePath + "/params/quantity", schemaPath: "#/properties/params/properties/quantity/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema34.properties.params.properties.quantity.type, parentSchema: schema34.properties.params.properties.quantity, data: data2 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
        if (data1.is !== void 0) {
          let data3 = data1.is;
          if (typeof data3 === "string") {
            if (func2(data3) > 400) {
              const err10 = { instancePath: instancePath + "/params/is", schemaPath: "#/properties/params/properties/is/maxLength", keyword: "maxLength", params: { limit: 400 }, message: "must NOT have more than 400 characters", schema: 400, parentSchema: schema34.properties.params.properties.is, data: data3 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
            if (func2(data3) < 1) {
              const err11 = { instancePath: instancePath + "/params/is", schemaPath: "#/properties/params/properties/is/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema34.properties.params.properties.is, data: data3 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
          } else {
            const err12 = { instancePath: instancePath + "/params/is", schemaPath: "#/properties/params/properties/is/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema34.properties.params.properties.is.type, parentSchema: schema34.properties.params.properties.is, data: data3 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
        }
        if (data1.from !== void 0) {
          let data4 = data1.from;
          if (typeof data4 === "string") {
            if (func2(data4) > 300) {
              const err13 = { instancePath: instancePath + "/params/from", schemaPath: "#/properties/params/properties/from/maxLength", keyword: "maxLength", params: { limit: 300 }, message: "must NOT have more than 300 characters", schema: 300, parentSchema: schema34.properties.params.properties.from, data: data4 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
            if (func2(data4) < 1) {
              const err14 = { instancePath: instancePath + "/params/from", schemaPath: "#/properties/params/properties/from/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema34.properties.params.properties.from, data: data4 };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
          } else {
            const err15 = { instancePath: instancePath + "/params/from", schemaPath: "#/properties/params/properties/from/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema34.properties.params.properties.from.type, parentSchema: schema34.properties.params.properties.from, data: data4 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
      } else {
        const err16 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema34.properties.params.type, parentSchema: schema34.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
  } else {
    const err17 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema34.type, parentSchema: schema34, data };
    if (vErrors === null) {
      vErrors = [err17];
    } else {
      vErrors.push(err17);
    }
    errors++;
  }
  validate92.errors = vErrors;
  return errors === 0;
}
var schema35 = { "title": "PreparePlace", "description": "How the location of a short is measured along a stretch of wire, and what there is to be placed.", "type": "object", "required": ["method"], "properties": { "method": { "const": "prepare-place" }, "params": { "title": "PreparePlaceParameters", "description": "Nothing for the list of shorts; else a wire and what it touches.", "type": "object", "additionalProperties": false, "dependencies": { "wire": ["touches"], "touches": ["wire"] }, "properties": { "wire": { "title": "Wire", "description": "A wire of the sensor.", "$ref": "#/definitions/name" }, "touches": { "title": "Touches", "description": "ground, battery, or another wire of the sensor, as in feed-wire.", "$ref": "#/definitions/name" }, "from": { "title": "From", "description": "Near end of the stretch; the sensor's connector when left out.", "$ref": "#/definitions/name" }, "to": { "title": "To", "description": "Far end of the stretch; that of the wire when left out.", "$ref": "#/definitions/name" } } } } };
function validate93(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema35.required, parentSchema: schema35, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("prepare-place" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "prepare-place" }, message: "must be equal to constant", schema: "prepare-place", parentSchema: schema35.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "wire" || key0 === "touches" || key0 === "from" || key0 === "to")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema35.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.wire !== void 0) {
          if (data1.touches === void 0) {
            const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/dependencies", keyword: "dependencies", params: {
              property: "wire",
              missingProperty: "touches",
              depsCount: 1,
              deps: "touches"
            }, message: "must have property touches when property wire is present", schema: schema35.properties.params.dependencies, parentSchema: schema35.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
        if (data1.touches !== void 0) {
          if (data1.wire === void 0) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/dependencies", keyword: "dependencies", params: {
              property: "touches",
              missingProperty: "wire",
              depsCount: 1,
              deps: "wire"
            }, message: "must have property wire when property touches is present", schema: schema35.properties.params.dependencies, parentSchema: schema35.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.wire !== void 0) {
          if (!validate28(data1.wire, { instancePath: instancePath + "/params/wire", parentData: data1, parentDataProperty: "wire", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.touches !== void 0) {
          if (!validate28(data1.touches, { instancePath: instancePath + "/params/touches", parentData: data1, parentDataProperty: "touches", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.from !== void 0) {
          if (!validate28(data1.from, { instancePath: instancePath + "/params/from", parentData: data1, parentDataProperty: "from", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.to !== void 0) {
          if (!validate28(data1.to, { instancePath: instancePath + "/params/to", parentData: data1, parentDataProperty: "to", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema35.properties.params.type, parentSchema: schema35.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema35.type, parentSchema: schema35, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate93.errors = vErrors;
  return errors === 0;
}
var schema36 = { "title": "Place", "description": "Records the drops along a stretch of wire, and where the short is. Until the conclusion.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "place" }, "params": { "title": "PlaceParameters", "description": "The stretch, what was off, and both drops.", "type": "object", "required": ["wire", "touches", "drops", "unplugged"], "additionalProperties": false, "properties": { "wire": { "title": "Wire", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "touches": { "title": "Touches", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "from": { "title": "From", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "to": { "title": "To", "description": "As for prepare-place.", "$ref": "#/definitions/name" }, "drops": { "title": "Drops", "description": "Fed at the near end, then at the far one; behind ; currents and length where they are known.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["6.6 mV, 15.5 mV", "6.6 mV, 15.5 mV; currents 0.21 A, 0.20 A; length 1.2 m"] }, "unplugged": { "title": "Unplugged", "description": "Parts that were off.", "type": "array", "maxItems": 20, "items": { "$ref": "#/definitions/name" } } } } } };
function validate98(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema36.required, parentSchema: schema36, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema36.required, parentSchema: schema36, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("place" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "place" }, message: "must be equal to constant", schema: "place", parentSchema: schema36.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.wire === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "wire" }, message: "must have required property 'wire'", schema: schema36.properties.params.required, parentSchema: schema36.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (data1.touches === void 0) {
          const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "touches" }, message: "must have required property 'touches'", schema: schema36.properties.params.required, parentSchema: schema36.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        if (data1.drops === void 0) {
          const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "drops" }, message: "must have required property 'drops'", schema: schema36.properties.params.required, parentSchema: schema36.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        if (data1.unplugged === void 0) {
          const err6 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "unplugged" }, message: "must have required property 'unplugged'", schema: schema36.properties.params.required, parentSchema: schema36.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "wire" || key0 === "touches" || key0 === "from" || key0 === "to" || key0 === "drops" || key0 === "unplugged")) {
            const err7 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema36.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
        if (data1.wire !== void 0) {
          if (!validate28(data1.wire, { instancePath: instancePath + "/params/wire", parentData: data1, parentDataProperty: "wire", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.touches !== void 0) {
          if (!validate28(data1.touches, { instancePath: instancePath + "/params/touches", parentData: data1, parentDataProperty: "touches", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.from !== void 0) {
          if (!validate28(data1.from, { instancePath: instancePath + "/params/from", parentData: data1, parentDataProperty: "from", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.to !== void 0) {
          if (!validate28(data1.to, { instancePath: instancePath + "/params/to", parentData: data1, parentDataProperty: "to", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.drops !== void 0) {
          let data6 = data1.drops;
          if (typeof data6 === "string") {
            if (func2(data6) > 200) {
              const err8 = { instancePath: instancePath + "/params/drops", schemaPath: "#/properties/params/properties/drops/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema36.properties.params.properties.drops, data: data6 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
            if (func2(data6) < 1) {
              const err9 = { instancePath: instancePath + "/params/drops", schemaPath: "#/properties/params/properties/drops/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema36.properties.params.properties.drops, data: data6 };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
          } else {
            const err10 = { instancePath: instancePath + "/params/drops", schemaPath: "#/properties/params/properties/drops/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema36.properties.params.properties.drops.type, parentSchema: schema36.properties.params.properties.drops, data: data6 };
            if (vErrors === null) {
              vErrors = [err10];
            } else {
              vErrors.push(err10);
            }
            errors++;
          }
        }
        if (data1.unplugged !== void 0) {
          let data7 = data1.unplugged;
          if (Array.isArray(data7)) {
            if (data7.length > 20) {
              const err11 = { instancePath: instancePath + "/params/unplugged", schemaPath: "#/properties/params/properties/unplugged/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema36.properties.params.properties.unplugged, data: data7 };
              if (vErrors === null) {
                vErrors = [err11];
              } else {
                vErrors.push(err11);
              }
              errors++;
            }
            const len0 = data7.length;
            for (let i0 = 0; i0 < len0; i0++) {
              if (!validate28(data7[i0], { instancePath: instancePath + "/params/unplugged/" + i0, parentData: data7, parentDataProperty: i0, rootData })) {
                vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
                errors = vErrors.length;
              }
            }
          } else {
            const err12 = { instancePath: instancePath + "/params/unplugged", schemaPath: "#/properties/params/properties/unplugged/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema36.properties.params.properties.unplugged.type, parentSchema: schema36.properties.params.properties.unplugged, data: data7 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
        }
      } else {
        const err13 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema36.properties.params.type, parentSchema: schema36.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err13];
        } else {
          vErrors.push(err13);
        }
        errors++;
      }
    }
  } else {
    const err14 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema36.type, parentSchema: schema36, data };
    if (vErrors === null) {
      vErrors = [err14];
    } else {
      vErrors.push(err14);
    }
    errors++;
  }
  validate98.errors = vErrors;
  return errors === 0;
}
var schema37 = { "title": "Watched", "description": "What was seen in one round of moving or warming, which answers nothing: at the present step, or at one that is made again after the repair.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "watched" }, "params": { "title": "WatchedParameters", "description": "One round.", "type": "object", "required": ["seen"], "additionalProperties": false, "properties": { "seen": { "title": "Seen", "description": "As a person types it.", "type": "string", "minLength": 1, "maxLength": 2e3, "examples": ["plug: 4.9 V to 5.1 V, 0 drops, 3 min"] }, "step": { "title": "Step", "description": "After the repair: the step that is made again.", "$ref": "#/definitions/name" } } } } };
function validate104(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema37.required, parentSchema: schema37, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema37.required, parentSchema: schema37, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("watched" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "watched" }, message: "must be equal to constant", schema: "watched", parentSchema: schema37.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.seen === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "seen" }, message: "must have required property 'seen'", schema: schema37.properties.params.required, parentSchema: schema37.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "seen" || key0 === "step")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema37.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.seen !== void 0) {
          let data2 = data1.seen;
          if (typeof data2 === "string") {
            if (func2(data2) > 2e3) {
              const err5 = { instancePath: instancePath + "/params/seen", schemaPath: "#/properties/params/properties/seen/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema37.properties.params.properties.seen, data: data2 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err6 = { instancePath: instancePath + "/params/seen", schemaPath: "#/properties/params/properties/seen/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema37.properties.params.properties.seen, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
          } else {
            const err7 = { instancePath: instancePath + "/params/seen", schemaPath: "#/properties/params/properties/seen/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema37.properties.params.properties.seen.type, parentSchema: schema37.properties.params.properties.seen, data: data2 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
        if (data1.step !== void 0) {
          if (!validate28(data1.step, { instancePath: instancePath + "/params/step", parentData: data1, parentDataProperty: "step", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err8 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema37.properties.params.type, parentSchema: schema37.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema37.type, parentSchema: schema37, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate104.errors = vErrors;
  return errors === 0;
}
var schema38 = { "title": "DrivePlan", "description": "What to record on a drive, for a fault that nothing wakes here.", "type": "object", "required": ["method"], "properties": { "method": { "const": "drive-plan" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate106(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema38.required, parentSchema: schema38, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("drive-plan" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "drive-plan" }, message: "must be equal to constant", schema: "drive-plan", parentSchema: schema38.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema38.type, parentSchema: schema38, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate106.errors = vErrors;
  return errors === 0;
}
var schema39 = { "title": "Capture", "description": "Measures a saved capture, or one of the simulated vehicle, for the present step, a test after the repair, or a test that no step asks for.", "type": "object", "required": ["method"], "properties": { "method": { "const": "capture" }, "params": { "title": "CaptureParameters", "description": "In a drill only test, and the capture counts at once.", "type": "object", "additionalProperties": false, "properties": { "file": { "title": "File", "description": "Path of the capture; the simulated vehicle makes one when left out.", "type": "string", "minLength": 1, "maxLength": 4e3 }, "second": { "title": "Second file", "description": "Path of the file with the other channels of the same crank.", "type": "string", "minLength": 1, "maxLength": 4e3 }, "against": { "title": "Against", "description": "Path of a known-good capture; or the angles the edges should be at. What the job sheet states when left out.", "type": "string", "minLength": 1, "maxLength": 4e3, "examples": ["good.csv", "falls at 114 deg, rises at 294 deg; within 4 deg"] }, "channel": { "title": "Channel", "description": "Which one is judged, from 1.", "type": "integer", "minimum": 1, "maximum": 1e3 }, "step": { "title": "Step", "description": "A test after the repair, by its step.", "$ref": "#/definitions/name" }, "test": { "title": "Test", "description": "A test that no step asks for.", "$ref": "#/definitions/testForm" }, "record": { "title": "Record", "description": "Takes it as the answer; it is only measured when left out.", "type": "boolean" } } } } };
function validate108(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema39.required, parentSchema: schema39, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("capture" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "capture" }, message: "must be equal to constant", schema: "capture", parentSchema: schema39.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "file" || key0 === "second" || key0 === "against" || key0 === "channel" || key0 === "step" || key0 === "test" || key0 === "record")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema39.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.file !== void 0) {
          let data2 = data1.file;
          if (typeof data2 === "string") {
            if (func2(data2) > 4e3) {
              const err3 = { instancePath: instancePath + "/params/file", schemaPath: "#/properties/params/properties/file/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema39.properties.params.properties.file, data: data2 };
              if (vErrors === null) {
                vErrors = [err3];
              } else {
                vErrors.push(err3);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err4 = { instancePath: instancePath + "/params/file", schemaPath: "#/properties/params/properties/file/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema39.properties.params.properties.file, data: data2 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
          } else {
            const err5 = { instancePath: instancePath + "/params/file", schemaPath: "#/properties/params/properties/file/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema39.properties.params.properties.file.type, parentSchema: schema39.properties.params.properties.file, data: data2 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.second !== void 0) {
          let data3 = data1.second;
          if (typeof data3 === "string") {
            if (func2(data3) > 4e3) {
              const err6 = { instancePath: instancePath + "/params/second", schemaPath: "#/properties/params/properties/second/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema39.properties.params.properties.second, data: data3 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
            if (func2(data3) < 1) {
              const err7 = { instancePath: instancePath + "/params/second", schemaPath: "#/properties/params/properties/second/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema39.properties.params.properties.second, data: data3 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
          } else {
            const err8 = { instancePath: instancePath + "/params/second", schemaPath: "#/properties/params/properties/second/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema39.properties.params.properties.second.type, parentSchema: schema39.properties.params.properties.second, data: data3 };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
        if (data1.against !== void 0) {
          let data4 = data1.against;
          if (typeof data4 === "string") {
            if (func2(data4) > 4e3) {
              const err9 = { instancePath: instancePath + "/params/against", schemaPath: "#/properties/params/properties/against/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema39.properties.params.properties.against, data: data4 };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
            if (func2(data4) < 1) {
              const err10 = { instancePath: instancePath + "/params/against", schemaPath: "#/properties/params/properties/against/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema39.properties.params.properties.against, data: data4 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          } else {
            const err11 = { instancePath: instancePath + "/params/against", schemaPath: "#/properties/params/properties/against/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema39.properties.params.properties.against.type, parentSchema: schema39.properties.params.properties.against, data: data4 };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
        if (data1.channel !== void 0) {
          let data5 = data1.channel;
          if (!(typeof data5 == "number" && (!(data5 % 1) && !isNaN(data5)) && isFinite(data5))) {
            const err12 = { instancePath: instancePath + "/params/channel", schemaPath: "#/properties/params/properties/channel/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema39.properties.params.properties.channel.type, parentSchema: schema39.properties.params.properties.channel, data: data5 };
            if (vErrors === null) {
              vErrors = [err12];
            } else {
              vErrors.push(err12);
            }
            errors++;
          }
          if (typeof data5 == "number" && isFinite(data5)) {
            if (data5 > 1e3 || isNaN(data5)) {
              const err13 = { instancePath: instancePath + "/params/channel", schemaPath: "#/properties/params/properties/channel/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e3 }, message: "must be <= 1000", schema: 1e3, parentSchema: schema39.properties.params.properties.channel, data: data5 };
              if (vErrors === null) {
                vErrors = [err13];
              } else {
                vErrors.push(err13);
              }
              errors++;
            }
            if (data5 < 1 || isNaN(data5)) {
              const err14 = { instancePath: instancePath + "/params/channel", schemaPath: "#/properties/params/properties/channel/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema39.properties.params.properties.channel, data: data5 };
              if (vErrors === null) {
                vErrors = [err14];
              } else {
                vErrors.push(err14);
              }
              errors++;
            }
          }
        }
        if (data1.step !== void 0) {
          if (!validate28(data1.step, { instancePath: instancePath + "/params/step", parentData: data1, parentDataProperty: "step", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.test !== void 0) {
          if (!validate36(data1.test, { instancePath: instancePath + "/params/test", parentData: data1, parentDataProperty: "test", rootData })) {
            vErrors = vErrors === null ? validate36.errors : vErrors.concat(validate36.errors);
            errors = vErrors.length;
          }
        }
        if (data1.record !== void 0) {
          let data8 = data1.record;
          if (typeof data8 !== "boolean") {
            const err15 = { instancePath: instancePath + "/params/record", schemaPath: "#/properties/params/properties/record/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema39.properties.params.properties.record.type, parentSchema: schema39.properties.params.properties.record, data: data8 };
            if (vErrors === null) {
              vErrors = [err15];
            } else {
              vErrors.push(err15);
            }
            errors++;
          }
        }
      } else {
        const err16 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema39.properties.params.type, parentSchema: schema39.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
    }
  } else {
    const err17 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema39.type, parentSchema: schema39, data };
    if (vErrors === null) {
      vErrors = [err17];
    } else {
      vErrors.push(err17);
    }
    errors++;
  }
  validate108.errors = vErrors;
  return errors === 0;
}
var schema40 = { "title": "Captures", "description": "Capture files to choose from.", "type": "object", "required": ["method"], "properties": { "method": { "const": "captures" }, "params": { "title": "CapturesParameters", "description": "Where the choice begins when left out.", "type": "object", "dependencies": { "name": ["folder"] }, "additionalProperties": false, "properties": { "folder": { "title": "Folder", "description": "What is in it.", "type": "string", "minLength": 1, "maxLength": 4e3 }, "name": { "title": "Name", "description": "What it leads to from there, as a person types it.", "type": "string", "minLength": 1, "maxLength": 4e3 } } } } };
function validate111(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema40.required, parentSchema: schema40, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("captures" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "captures" }, message: "must be equal to constant", schema: "captures", parentSchema: schema40.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "folder" || key0 === "name")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema40.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.name !== void 0) {
          if (data1.folder === void 0) {
            const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/dependencies", keyword: "dependencies", params: {
              property: "name",
              missingProperty: "folder",
              depsCount: 1,
              deps: "folder"
            }, message: "must have property folder when property name is present", schema: schema40.properties.params.dependencies, parentSchema: schema40.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
        if (data1.folder !== void 0) {
          let data2 = data1.folder;
          if (typeof data2 === "string") {
            if (func2(data2) > 4e3) {
              const err4 = { instancePath: instancePath + "/params/folder", schemaPath: "#/properties/params/properties/folder/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema40.properties.params.properties.folder, data: data2 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err5 = { instancePath: instancePath + "/params/folder", schemaPath: "#/properties/params/properties/folder/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema40.properties.params.properties.folder, data: data2 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
          } else {
            const err6 = { instancePath: instancePath + "/params/folder", schemaPath: "#/properties/params/properties/folder/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.properties.params.properties.folder.type, parentSchema: schema40.properties.params.properties.folder, data: data2 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
        if (data1.name !== void 0) {
          let data3 = data1.name;
          if (typeof data3 === "string") {
            if (func2(data3) > 4e3) {
              const err7 = { instancePath: instancePath + "/params/name", schemaPath: "#/properties/params/properties/name/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema40.properties.params.properties.name, data: data3 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (func2(data3) < 1) {
              const err8 = { instancePath: instancePath + "/params/name", schemaPath: "#/properties/params/properties/name/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema40.properties.params.properties.name, data: data3 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          } else {
            const err9 = { instancePath: instancePath + "/params/name", schemaPath: "#/properties/params/properties/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema40.properties.params.properties.name.type, parentSchema: schema40.properties.params.properties.name, data: data3 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
      } else {
        const err10 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema40.properties.params.type, parentSchema: schema40.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
    }
  } else {
    const err11 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema40.type, parentSchema: schema40, data };
    if (vErrors === null) {
      vErrors = [err11];
    } else {
      vErrors.push(err11);
    }
    errors++;
  }
  validate111.errors = vErrors;
  return errors === 0;
}
var schema41 = { "title": "Instruments", "description": "What is at hand; changes it when anything is given.", "type": "object", "required": ["method"], "properties": { "method": { "const": "instruments" }, "params": { "title": "InstrumentsParameters", "description": "What is left out stays.", "type": "object", "additionalProperties": false, "properties": { "instruments": { "title": "Instruments", "description": "All that are at hand.", "type": "array", "uniqueItems": true, "items": { "enum": ["meter", "test-light", "lamp", "scope", "live-data", "spare-sensor", "resistor", "lead", "milliammeter", "helper"] } }, "meter": { "title": "Meter", "description": "Its accuracy, from its manual.", "type": "object", "required": ["name", "inputOhms", "volts", "ohms"], "additionalProperties": false, "properties": { "name": { "title": "Name", "description": "As shown on reports.", "type": "string", "maxLength": 200 }, "inputOhms": { "title": "Input resistance", "description": "In ohms.", "type": "number", "minimum": 1e4, "maximum": 1e12 }, "volts": { "title": "Volts", "description": "On volts.", "$ref": "#/definitions/accuracy" }, "ohms": { "title": "Ohms", "description": "On ohms.", "$ref": "#/definitions/accuracy" }, "amps": { "title": "Milliamperes", "description": "On milliamperes; an ordinary one where it is left out.", "$ref": "#/definitions/accuracy" } } } } } } };
var schema42 = { "title": "AccuracyForm", "type": "object", "required": ["ranges", "counts", "ofReading", "digits"], "additionalProperties": false, "properties": { "ranges": { "title": "Ranges", "description": "Full scale of each range in V or ohm, rising.", "type": "array", "minItems": 1, "maxItems": 20, "items": { "type": "number", "exclusiveMinimum": 0 } }, "counts": { "title": "Counts", "description": "Of the display at full scale.", "type": "integer", "minimum": 1, "maximum": 1e6 }, "ofReading": { "title": "Share of the reading", "description": "0.005 for half a per cent.", "type": "number", "minimum": 0, "maximum": 0.2 }, "digits": { "title": "Digits", "description": "Counts of the last digit.", "type": "integer", "minimum": 0, "maximum": 100 } } };
function validate113(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.ranges === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "ranges" }, message: "must have required property 'ranges'", schema: schema42.required, parentSchema: schema42, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.counts === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "counts" }, message: "must have required property 'counts'", schema: schema42.required, parentSchema: schema42, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.ofReading === void 0) {
      const err2 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "ofReading" }, message: "must have required property 'ofReading'", schema: schema42.required, parentSchema: schema42, data };
      if (vErrors === null) {
        vErrors = [err2];
      } else {
        vErrors.push(err2);
      }
      errors++;
    }
    if (data.digits === void 0) {
      const err3 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "digits" }, message: "must have required property 'digits'", schema: schema42.required, parentSchema: schema42, data };
      if (vErrors === null) {
        vErrors = [err3];
      } else {
        vErrors.push(err3);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "ranges" || key0 === "counts" || key0 === "ofReading" || key0 === "digits")) {
        const err4 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema42, data };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.ranges !== void 0) {
      let data0 = data.ranges;
      if (Array.isArray(data0)) {
        if (data0.length > 20) {
          const err5 = { instancePath: instancePath + "/ranges", schemaPath: "#/properties/ranges/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema42.properties.ranges, data: data0 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        if (data0.length < 1) {
          const err6 = { instancePath: instancePath + "/ranges", schemaPath: "#/properties/ranges/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema42.properties.ranges, data: data0 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        const len0 = data0.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data1 = data0[i0];
          if (typeof data1 == "number" && isFinite(data1)) {
            if (data1 <= 0 || isNaN(data1)) {
              const err7 = { instancePath: instancePath + "/ranges/" + i0, schemaPath: "#/properties/ranges/items/exclusiveMinimum", keyword: "exclusiveMinimum", params: { comparison: ">", limit: 0 }, message: "must be > 0", schema: 0, parentSchema: schema42.properties.ranges.items, data: data1 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
          } else {
            const err8 = { instancePath: instancePath + "/ranges/" + i0, schemaPath: "#/properties/ranges/items/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema42.properties.ranges.items.type, parentSchema: schema42.properties.ranges.items, data: data1 };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
      } else {
        const err9 = { instancePath: instancePath + "/ranges", schemaPath: "#/properties/ranges/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema42.properties.ranges.type, parentSchema: schema42.properties.ranges, data: data0 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
    if (data.counts !== void 0) {
      let data2 = data.counts;
      if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
        const err10 = { instancePath: instancePath + "/counts", schemaPath: "#/properties/counts/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema42.properties.counts.type, parentSchema: schema42.properties.counts, data: data2 };
        if (vErrors === null) {
          vErrors = [err10];
        } else {
          vErrors.push(err10);
        }
        errors++;
      }
      if (typeof data2 == "number" && isFinite(data2)) {
        if (data2 > 1e6 || isNaN(data2)) {
          const err11 = { instancePath: instancePath + "/counts", schemaPath: "#/properties/counts/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e6 }, message: "must be <= 1000000", schema: 1e6, parentSchema: schema42.properties.counts, data: data2 };
          if (vErrors === null) {
            vErrors = [err11];
          } else {
            vErrors.push(err11);
          }
          errors++;
        }
        if (data2 < 1 || isNaN(data2)) {
          const err12 = { instancePath: instancePath + "/counts", schemaPath: "#/properties/counts/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1 }, message: "must be >= 1", schema: 1, parentSchema: schema42.properties.counts, data: data2 };
          if (vErrors === null) {
            vErrors = [err12];
          } else {
            vErrors.push(err12);
          }
          errors++;
        }
      }
    }
    if (data.ofReading !== void 0) {
      let data3 = data.ofReading;
      if (typeof data3 == "number" && isFinite(data3)) {
        if (data3 > 0.2 || isNaN(data3)) {
          const err13 = { instancePath: instancePath + "/ofReading", schemaPath: "#/properties/ofReading/maximum", keyword: "maximum", params: { comparison: "<=", limit: 0.2 }, message: "must be <= 0.2", schema: 0.2, parentSchema: schema42.properties.ofReading, data: data3 };
          if (vErrors === null) {
            vErrors = [err13];
          } else {
            vErrors.push(err13);
          }
          errors++;
        }
        if (data3 < 0 || isNaN(data3)) {
          const err14 = { instancePath: instancePath + "/ofReading", schemaPath: "#/properties/ofReading/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema42.properties.ofReading, data: data3 };
          if (vErrors === null) {
            vErrors = [err14];
          } else {
            vErrors.push(err14);
          }
          errors++;
        }
      } else {
        const err15 = { instancePath: instancePath + "/ofReading", schemaPath: "#/properties/ofReading/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema42.properties.ofReading.type, parentSchema: schema42.properties.ofReading, data: data3 };
        if (vErrors === null) {
          vErrors = [err15];
        } else {
          vErrors.push(err15);
        }
        errors++;
      }
    }
    if (data.digits !== void 0) {
      let data4 = data.digits;
      if (!(typeof data4 == "number" && (!(data4 % 1) && !isNaN(data4)) && isFinite(data4))) {
        const err16 = { instancePath: instancePath + "/digits", schemaPath: "#/properties/digits/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema42.properties.digits.type, parentSchema: schema42.properties.digits, data: data4 };
        if (vErrors === null) {
          vErrors = [err16];
        } else {
          vErrors.push(err16);
        }
        errors++;
      }
      if (typeof data4 == "number" && isFinite(data4)) {
        if (data4 > 100 || isNaN(data4)) {
          const err17 = { instancePath: instancePath + "/digits", schemaPath: "#/properties/digits/maximum", keyword: "maximum", params: { comparison: "<=", limit: 100 }, message: "must be <= 100", schema: 100, parentSchema: schema42.properties.digits, data: data4 };
          if (vErrors === null) {
            vErrors = [err17];
          } else {
            vErrors.push(err17);
          }
          errors++;
        }
        if (data4 < 0 || isNaN(data4)) {
          const err18 = { instancePath: instancePath + "/digits", schemaPath: "#/properties/digits/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema42.properties.digits, data: data4 };
          if (vErrors === null) {
            vErrors = [err18];
          } else {
            vErrors.push(err18);
          }
          errors++;
        }
      }
    }
  } else {
    const err19 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema42.type, parentSchema: schema42, data };
    if (vErrors === null) {
      vErrors = [err19];
    } else {
      vErrors.push(err19);
    }
    errors++;
  }
  validate113.errors = vErrors;
  return errors === 0;
}
function validate112(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema41.required, parentSchema: schema41, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("instruments" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "instruments" }, message: "must be equal to constant", schema: "instruments", parentSchema: schema41.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "instruments" || key0 === "meter")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema41.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.instruments !== void 0) {
          let data2 = data1.instruments;
          if (Array.isArray(data2)) {
            const len0 = data2.length;
            for (let i0 = 0; i0 < len0; i0++) {
              let data3 = data2[i0];
              if (!(data3 === "meter" || data3 === "test-light" || data3 === "lamp" || data3 === "scope" || data3 === "live-data" || data3 === "spare-sensor" || data3 === "resistor" || data3 === "lead" || data3 === "milliammeter" || data3 === "helper")) {
                const err3 = { instancePath: instancePath + "/params/instruments/" + i0, schemaPath: "#/properties/params/properties/instruments/items/enum", keyword: "enum", params: { allowedValues: schema41.properties.params.properties.instruments.items.enum }, message: "must be equal to one of the allowed values", schema: schema41.properties.params.properties.instruments.items.enum, parentSchema: schema41.properties.params.properties.instruments.items, data: data3 };
                if (vErrors === null) {
                  vErrors = [err3];
                } else {
                  vErrors.push(err3);
                }
                errors++;
              }
            }
            let i1 = data2.length;
            let j0;
            if (i1 > 1) {
              outer0: for (; i1--; ) {
                for (j0 = i1; j0--; ) {
                  if (func0(data2[i1], data2[j0])) {
                    const err4 = { instancePath: instancePath + "/params/instruments", schemaPath: "#/properties/params/properties/instruments/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)", schema: true, parentSchema: schema41.properties.params.properties.instruments, data: data2 };
                    if (vErrors === null) {
                      vErrors = [err4];
                    } else {
                      vErrors.push(err4);
                    }
                    errors++;
                    break outer0;
                  }
                }
              }
            }
          } else {
            const err5 = { instancePath: instancePath + "/params/instruments", schemaPath: "#/properties/params/properties/instruments/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema41.properties.params.properties.instruments.type, parentSchema: schema41.properties.params.properties.instruments, data: data2 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.meter !== void 0) {
          let data4 = data1.meter;
          if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
            if (data4.name === void 0) {
              const err6 = { instancePath: instancePath + "/params/meter", schemaPath: "#/properties/params/properties/meter/required", keyword: "required", params: { missingProperty: "name" }, message: "must have required property 'name'", schema: schema41.properties.params.properties.meter.required, parentSchema: schema41.properties.params.properties.meter, data: data4 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
            if (data4.inputOhms === void 0) {
              const err7 = { instancePath: instancePath + "/params/meter", schemaPath: "#/properties/params/properties/meter/required", keyword: "required", params: { missingProperty: "inputOhms" }, message: "must have required property 'inputOhms'", schema: schema41.properties.params.properties.meter.required, parentSchema: schema41.properties.params.properties.meter, data: data4 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (data4.volts === void 0) {
              const err8 = { instancePath: instancePath + "/params/meter", schemaPath: "#/properties/params/properties/meter/required", keyword: "required", params: { missingProperty: "volts" }, message: "must have required property 'volts'", schema: schema41.properties.params.properties.meter.required, parentSchema: schema41.properties.params.properties.meter, data: data4 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
            if (data4.ohms === void 0) {
              const err9 = { instancePath: instancePath + "/params/meter", schemaPath: "#/properties/params/properties/meter/required", keyword: "required", params: { missingProperty: "ohms" }, message: "must have required property 'ohms'", schema: schema41.properties.params.properties.meter.required, parentSchema: schema41.properties.params.properties.meter, data: data4 };
              if (vErrors === null) {
                vErrors = [err9];
              } else {
                vErrors.push(err9);
              }
              errors++;
            }
            for (const key1 in data4) {
              if (!(key1 === "name" || key1 === "inputOhms" || key1 === "volts" || key1 === "ohms" || key1 === "amps")) {
                const err10 = { instancePath: instancePath + "/params/meter", schemaPath: "#/properties/params/properties/meter/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema41.properties.params.properties.meter, data: data4 };
                if (vErrors === null) {
                  vErrors = [err10];
                } else {
                  vErrors.push(err10);
                }
                errors++;
              }
            }
            if (data4.name !== void 0) {
              let data5 = data4.name;
              if (typeof data5 === "string") {
                if (func2(data5) > 200) {
                  const err11 = { instancePath: instancePath + "/params/meter/name", schemaPath: "#/properties/params/properties/meter/properties/name/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema41.properties.params.properties.meter.properties.name, data: data5 };
                  if (vErrors === null) {
                    vErrors = [err11];
                  } else {
                    vErrors.push(err11);
                  }
                  errors++;
                }
              } else {
                const err12 = { instancePath: instancePath + "/params/meter/name", schemaPath: "#/properties/params/properties/meter/properties/name/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema41.properties.params.properties.meter.properties.name.type, parentSchema: schema41.properties.params.properties.meter.properties.name, data: data5 };
                if (vErrors === null) {
                  vErrors = [err12];
                } else {
                  vErrors.push(err12);
                }
                errors++;
              }
            }
            if (data4.inputOhms !== void 0) {
              let data6 = data4.inputOhms;
              if (typeof data6 == "number" && isFinite(data6)) {
                if (data6 > 1e12 || isNaN(data6)) {
                  const err13 = { instancePath: instancePath + "/params/meter/inputOhms", schemaPath: "#/properties/params/properties/meter/properties/inputOhms/maximum", keyword: "maximum", params: { comparison: "<=", limit: 1e12 }, message: "must be <= 1000000000000", schema: 1e12, parentSchema: schema41.properties.params.properties.meter.properties.inputOhms, data: data6 };
                  if (vErrors === null) {
                    vErrors = [err13];
                  } else {
                    vErrors.push(err13);
                  }
                  errors++;
                }
                if (data6 < 1e4 || isNaN(data6)) {
                  const err14 = { instancePath: instancePath + "/params/meter/inputOhms", schemaPath: "#/properties/params/properties/meter/properties/inputOhms/minimum", keyword: "minimum", params: { comparison: ">=", limit: 1e4 }, message: "must be >= 10000", schema: 1e4, parentSchema: schema41.properties.params.properties.meter.properties.inputOhms, data: data6 };
                  if (vErrors === null) {
                    vErrors = [err14];
                  } else {
                    vErrors.push(err14);
                  }
                  errors++;
                }
              } else {
                const err15 = { instancePath: instancePath + "/params/meter/inputOhms", schemaPath: "#/properties/params/properties/meter/properties/inputOhms/type", keyword: "type", params: { type: "number" }, message: "must be number", schema: schema41.properties.params.properties.meter.properties.inputOhms.type, parentSchema: schema41.properties.params.properties.meter.properties.inputOhms, data: data6 };
                if (vErrors === null) {
                  vErrors = [err15];
                } else {
                  vErrors.push(err15);
                }
                errors++;
              }
            }
            if (data4.volts !== void 0) {
              if (!validate113(data4.volts, { instancePath: instancePath + "/params/meter/volts", parentData: data4, parentDataProperty: "volts", rootData })) {
                vErrors = vErrors === null ? validate113.errors : vErrors.concat(validate113.errors);
                errors = vErrors.length;
              }
            }
            if (data4.ohms !== void 0) {
              if (!validate113(data4.ohms, { instancePath: instancePath + "/params/meter/ohms", parentData: data4, parentDataProperty: "ohms", rootData })) {
                vErrors = vErrors === null ? validate113.errors : vErrors.concat(validate113.errors);
                errors = vErrors.length;
              }
            }
            if (data4.amps !== void 0) {
              if (!validate113(data4.amps, { instancePath: instancePath + "/params/meter/amps", parentData: data4, parentDataProperty: "amps", rootData })) {
                vErrors = vErrors === null ? validate113.errors : vErrors.concat(validate113.errors);
                errors = vErrors.length;
              }
            }
          } else {
            const err16 = { instancePath: instancePath + "/params/meter", schemaPath: "#/properties/params/properties/meter/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema41.properties.params.properties.meter.type, parentSchema: schema41.properties.params.properties.meter, data: data4 };
            if (vErrors === null) {
              vErrors = [err16];
            } else {
              vErrors.push(err16);
            }
            errors++;
          }
        }
      } else {
        const err17 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema41.properties.params.type, parentSchema: schema41.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err17];
        } else {
          vErrors.push(err17);
        }
        errors++;
      }
    }
  } else {
    const err18 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema41.type, parentSchema: schema41, data };
    if (vErrors === null) {
      vErrors = [err18];
    } else {
      vErrors.push(err18);
    }
    errors++;
  }
  validate112.errors = vErrors;
  return errors === 0;
}
var schema43 = { "title": "Suspects", "description": "All that it could be, by chance.", "type": "object", "required": ["method"], "properties": { "method": { "const": "suspects" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate117(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema43.required, parentSchema: schema43, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("suspects" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "suspects" }, message: "must be equal to constant", schema: "suspects", parentSchema: schema43.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema43.type, parentSchema: schema43, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate117.errors = vErrors;
  return errors === 0;
}
var schema44 = { "title": "Next", "description": "The tests that would tell most now, best first, without those that were set aside.", "type": "object", "required": ["method"], "properties": { "method": { "const": "next" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate119(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema44.required, parentSchema: schema44, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("next" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "next" }, message: "must be equal to constant", schema: "next", parentSchema: schema44.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema44.type, parentSchema: schema44, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate119.errors = vErrors;
  return errors === 0;
}
var schema45 = { "title": "Aside", "description": "This test can't be done here, and is proposed no more; or can after all. Of a connector or a vehicle state: all that need it, and steps of the tree that need it are skipped.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "aside" }, "params": { "title": "AsideParameters", "description": "Which: a test, a connector or a vehicle state.", "type": "object", "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "As in test.", "$ref": "#/definitions/testForm" }, "connector": { "title": "Connector", "description": "The part whose connector cannot be reached.", "$ref": "#/definitions/name" }, "state": { "title": "State", "description": "The state that the vehicle cannot be had in, nor in one that is reached through it.", "enum": ["key-on", "cranking", "running"] }, "reason": { "title": "Reason", "description": "With a connector or a state: in a few words, for the record. Left out: that it could not be reached, or the vehicle not be had so.", "$ref": "#/definitions/text" }, "aside": { "title": "Aside", "description": "False: it can be made after all. Left out it is true.", "type": "boolean" } } } } };
function validate121(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema45.required, parentSchema: schema45, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema45.required, parentSchema: schema45, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("aside" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "aside" }, message: "must be equal to constant", schema: "aside", parentSchema: schema45.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "test" || key0 === "connector" || key0 === "state" || key0 === "reason" || key0 === "aside")) {
            const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema45.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
        if (data1.test !== void 0) {
          if (!validate36(data1.test, { instancePath: instancePath + "/params/test", parentData: data1, parentDataProperty: "test", rootData })) {
            vErrors = vErrors === null ? validate36.errors : vErrors.concat(validate36.errors);
            errors = vErrors.length;
          }
        }
        if (data1.connector !== void 0) {
          if (!validate28(data1.connector, { instancePath: instancePath + "/params/connector", parentData: data1, parentDataProperty: "connector", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.state !== void 0) {
          let data4 = data1.state;
          if (!(data4 === "key-on" || data4 === "cranking" || data4 === "running")) {
            const err4 = { instancePath: instancePath + "/params/state", schemaPath: "#/properties/params/properties/state/enum", keyword: "enum", params: { allowedValues: schema45.properties.params.properties.state.enum }, message: "must be equal to one of the allowed values", schema: schema45.properties.params.properties.state.enum, parentSchema: schema45.properties.params.properties.state, data: data4 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.reason !== void 0) {
          if (!validate76(data1.reason, { instancePath: instancePath + "/params/reason", parentData: data1, parentDataProperty: "reason", rootData })) {
            vErrors = vErrors === null ? validate76.errors : vErrors.concat(validate76.errors);
            errors = vErrors.length;
          }
        }
        if (data1.aside !== void 0) {
          let data6 = data1.aside;
          if (typeof data6 !== "boolean") {
            const err5 = { instancePath: instancePath + "/params/aside", schemaPath: "#/properties/params/properties/aside/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema45.properties.params.properties.aside.type, parentSchema: schema45.properties.params.properties.aside, data: data6 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema45.properties.params.type, parentSchema: schema45.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema45.type, parentSchema: schema45, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate121.errors = vErrors;
  return errors === 0;
}
var schema46 = { "title": "Weigh", "description": "What speaks for a conclusion and what would prove it. Nothing is concluded.", "type": "object", "required": ["method"], "properties": { "method": { "const": "weigh" }, "params": { "title": "WeighParameters", "description": "The tree's own conclusion when left out.", "type": "object", "additionalProperties": false, "properties": { "faults": { "title": "Faults", "description": "Of the circuit.", "type": "array", "maxItems": 80, "items": { "$ref": "#/definitions/name" } } } } } };
function validate125(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema46.required, parentSchema: schema46, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("weigh" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "weigh" }, message: "must be equal to constant", schema: "weigh", parentSchema: schema46.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "faults")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema46.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.faults !== void 0) {
          let data2 = data1.faults;
          if (Array.isArray(data2)) {
            if (data2.length > 80) {
              const err3 = { instancePath: instancePath + "/params/faults", schemaPath: "#/properties/params/properties/faults/maxItems", keyword: "maxItems", params: { limit: 80 }, message: "must NOT have more than 80 items", schema: 80, parentSchema: schema46.properties.params.properties.faults, data: data2 };
              if (vErrors === null) {
                vErrors = [err3];
              } else {
                vErrors.push(err3);
              }
              errors++;
            }
            const len0 = data2.length;
            for (let i0 = 0; i0 < len0; i0++) {
              if (!validate28(data2[i0], { instancePath: instancePath + "/params/faults/" + i0, parentData: data2, parentDataProperty: i0, rootData })) {
                vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
                errors = vErrors.length;
              }
            }
          } else {
            const err4 = { instancePath: instancePath + "/params/faults", schemaPath: "#/properties/params/properties/faults/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema46.properties.params.properties.faults.type, parentSchema: schema46.properties.params.properties.faults, data: data2 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema46.properties.params.type, parentSchema: schema46.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema46.type, parentSchema: schema46, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate125.errors = vErrors;
  return errors === 0;
}
var schema47 = { "title": "Accept", "description": "Accepts the conclusion that the tree has come to.", "type": "object", "required": ["method"], "properties": { "method": { "const": "accept" }, "params": { "title": "AcceptParameters", "description": "Whether it is accepted all the same.", "type": "object", "additionalProperties": false, "properties": { "sure": { "title": "All the same", "description": "It rests on one reading that is not made again.", "type": "boolean" } } } } };
function validate127(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema47.required, parentSchema: schema47, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("accept" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "accept" }, message: "must be equal to constant", schema: "accept", parentSchema: schema47.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "sure")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema47.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.sure !== void 0) {
          let data2 = data1.sure;
          if (typeof data2 !== "boolean") {
            const err3 = { instancePath: instancePath + "/params/sure", schemaPath: "#/properties/params/properties/sure/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema47.properties.params.properties.sure.type, parentSchema: schema47.properties.params.properties.sure, data: data2 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
        }
      } else {
        const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema47.properties.params.type, parentSchema: schema47.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
  } else {
    const err5 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema47.type, parentSchema: schema47, data };
    if (vErrors === null) {
      vErrors = [err5];
    } else {
      vErrors.push(err5);
    }
    errors++;
  }
  validate127.errors = vErrors;
  return errors === 0;
}
var schema48 = { "title": "Conclude", "description": "A conclusion of one's own, whatever the tree says.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "conclude" }, "params": { "title": "ConcludeParameters", "description": "Faults of the circuit, or words.", "type": "object", "minProperties": 1, "additionalProperties": false, "properties": { "faults": { "title": "Faults", "description": "Of the circuit.", "type": "array", "minItems": 1, "maxItems": 80, "items": { "$ref": "#/definitions/name" } }, "words": { "title": "In words", "description": "What is wrong, where no fault of the circuit says it.", "$ref": "#/definitions/text" }, "sure": { "title": "All the same", "description": "It rests on one reading that is not made again.", "type": "boolean" } } } } };
function validate128(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema48.required, parentSchema: schema48, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema48.required, parentSchema: schema48, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("conclude" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "conclude" }, message: "must be equal to constant", schema: "conclude", parentSchema: schema48.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (Object.keys(data1).length < 1) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema48.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "faults" || key0 === "words" || key0 === "sure")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema48.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.faults !== void 0) {
          let data2 = data1.faults;
          if (Array.isArray(data2)) {
            if (data2.length > 80) {
              const err5 = { instancePath: instancePath + "/params/faults", schemaPath: "#/properties/params/properties/faults/maxItems", keyword: "maxItems", params: { limit: 80 }, message: "must NOT have more than 80 items", schema: 80, parentSchema: schema48.properties.params.properties.faults, data: data2 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
            if (data2.length < 1) {
              const err6 = { instancePath: instancePath + "/params/faults", schemaPath: "#/properties/params/properties/faults/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema48.properties.params.properties.faults, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
            const len0 = data2.length;
            for (let i0 = 0; i0 < len0; i0++) {
              if (!validate28(data2[i0], { instancePath: instancePath + "/params/faults/" + i0, parentData: data2, parentDataProperty: i0, rootData })) {
                vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
                errors = vErrors.length;
              }
            }
          } else {
            const err7 = { instancePath: instancePath + "/params/faults", schemaPath: "#/properties/params/properties/faults/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema48.properties.params.properties.faults.type, parentSchema: schema48.properties.params.properties.faults, data: data2 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
        if (data1.words !== void 0) {
          if (!validate76(data1.words, { instancePath: instancePath + "/params/words", parentData: data1, parentDataProperty: "words", rootData })) {
            vErrors = vErrors === null ? validate76.errors : vErrors.concat(validate76.errors);
            errors = vErrors.length;
          }
        }
        if (data1.sure !== void 0) {
          let data5 = data1.sure;
          if (typeof data5 !== "boolean") {
            const err8 = { instancePath: instancePath + "/params/sure", schemaPath: "#/properties/params/properties/sure/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema48.properties.params.properties.sure.type, parentSchema: schema48.properties.params.properties.sure, data: data5 };
            if (vErrors === null) {
              vErrors = [err8];
            } else {
              vErrors.push(err8);
            }
            errors++;
          }
        }
      } else {
        const err9 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema48.properties.params.type, parentSchema: schema48.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err9];
        } else {
          vErrors.push(err9);
        }
        errors++;
      }
    }
  } else {
    const err10 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema48.type, parentSchema: schema48, data };
    if (vErrors === null) {
      vErrors = [err10];
    } else {
      vErrors.push(err10);
    }
    errors++;
  }
  validate128.errors = vErrors;
  return errors === 0;
}
var schema49 = { "title": "Retests", "description": "The tests that must pass after the repair, with the readings before and after.", "type": "object", "required": ["method"], "properties": { "method": { "const": "retests" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate131(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema49.required, parentSchema: schema49, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("retests" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "retests" }, message: "must be equal to constant", schema: "retests", parentSchema: schema49.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema49.type, parentSchema: schema49, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate131.errors = vErrors;
  return errors === 0;
}
var schema50 = { "title": "Retest", "description": "Answers a test after the repair.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "retest" }, "params": { "title": "RetestParameters", "description": "Which step, and one of reading, choose, take and cannot.", "type": "object", "required": ["step"], "additionalProperties": false, "properties": { "step": { "title": "Step", "description": "Of the answer to retests.", "$ref": "#/definitions/name" }, "reading": { "title": "Reading", "description": "What the meter showed.", "$ref": "#/definitions/readingText" }, "choose": { "title": "Choice", "description": "Name of an outcome, or of a look.", "$ref": "#/definitions/name" }, "take": { "title": "Take", "description": "What the simulated vehicle shows after its repair.", "type": "boolean" }, "cannot": { "title": "Cannot", "description": "Why it cannot be made.", "$ref": "#/definitions/text" }, "sure": { "title": "Sure", "description": "The meter really shows this, though it looks like a slip.", "type": "boolean" } } } } };
function validate133(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema50.required, parentSchema: schema50, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema50.required, parentSchema: schema50, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("retest" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "retest" }, message: "must be equal to constant", schema: "retest", parentSchema: schema50.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.step === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "step" }, message: "must have required property 'step'", schema: schema50.properties.params.required, parentSchema: schema50.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "step" || key0 === "reading" || key0 === "choose" || key0 === "take" || key0 === "cannot" || key0 === "sure")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema50.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.step !== void 0) {
          if (!validate28(data1.step, { instancePath: instancePath + "/params/step", parentData: data1, parentDataProperty: "step", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.reading !== void 0) {
          if (!validate67(data1.reading, { instancePath: instancePath + "/params/reading", parentData: data1, parentDataProperty: "reading", rootData })) {
            vErrors = vErrors === null ? validate67.errors : vErrors.concat(validate67.errors);
            errors = vErrors.length;
          }
        }
        if (data1.choose !== void 0) {
          if (!validate28(data1.choose, { instancePath: instancePath + "/params/choose", parentData: data1, parentDataProperty: "choose", rootData })) {
            vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
            errors = vErrors.length;
          }
        }
        if (data1.take !== void 0) {
          let data5 = data1.take;
          if (typeof data5 !== "boolean") {
            const err5 = { instancePath: instancePath + "/params/take", schemaPath: "#/properties/params/properties/take/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema50.properties.params.properties.take.type, parentSchema: schema50.properties.params.properties.take, data: data5 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.cannot !== void 0) {
          if (!validate76(data1.cannot, { instancePath: instancePath + "/params/cannot", parentData: data1, parentDataProperty: "cannot", rootData })) {
            vErrors = vErrors === null ? validate76.errors : vErrors.concat(validate76.errors);
            errors = vErrors.length;
          }
        }
        if (data1.sure !== void 0) {
          let data7 = data1.sure;
          if (typeof data7 !== "boolean") {
            const err6 = { instancePath: instancePath + "/params/sure", schemaPath: "#/properties/params/properties/sure/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema50.properties.params.properties.sure.type, parentSchema: schema50.properties.params.properties.sure, data: data7 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
      } else {
        const err7 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema50.properties.params.type, parentSchema: schema50.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err7];
        } else {
          vErrors.push(err7);
        }
        errors++;
      }
    }
  } else {
    const err8 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema50.type, parentSchema: schema50, data };
    if (vErrors === null) {
      vErrors = [err8];
    } else {
      vErrors.push(err8);
    }
    errors++;
  }
  validate133.errors = vErrors;
  return errors === 0;
}
var schema51 = { "title": "Drive", "description": "Reports what the trouble codes did once the vehicle was driven; also of a closed record.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "drive" }, "params": { "title": "Parameters", "description": "What the codes did, and how it was driven.", "type": "object", "required": ["code"], "additionalProperties": false, "properties": { "code": { "title": "Code", "description": "What they did.", "enum": ["stayed-away", "came-back"] }, "words": { "title": "Words", "description": "How it was driven, and what else was seen.", "type": "string", "maxLength": 2e3 } } } } };
function validate138(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema51.required, parentSchema: schema51, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema51.required, parentSchema: schema51, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("drive" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "drive" }, message: "must be equal to constant", schema: "drive", parentSchema: schema51.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.code === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "code" }, message: "must have required property 'code'", schema: schema51.properties.params.required, parentSchema: schema51.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "code" || key0 === "words")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema51.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.code !== void 0) {
          let data2 = data1.code;
          if (!(data2 === "stayed-away" || data2 === "came-back")) {
            const err5 = { instancePath: instancePath + "/params/code", schemaPath: "#/properties/params/properties/code/enum", keyword: "enum", params: { allowedValues: schema51.properties.params.properties.code.enum }, message: "must be equal to one of the allowed values", schema: schema51.properties.params.properties.code.enum, parentSchema: schema51.properties.params.properties.code, data: data2 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.words !== void 0) {
          let data3 = data1.words;
          if (typeof data3 === "string") {
            if (func2(data3) > 2e3) {
              const err6 = { instancePath: instancePath + "/params/words", schemaPath: "#/properties/params/properties/words/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema51.properties.params.properties.words, data: data3 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
          } else {
            const err7 = { instancePath: instancePath + "/params/words", schemaPath: "#/properties/params/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema51.properties.params.properties.words.type, parentSchema: schema51.properties.params.properties.words, data: data3 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
      } else {
        const err8 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema51.properties.params.type, parentSchema: schema51.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema51.type, parentSchema: schema51, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate138.errors = vErrors;
  return errors === 0;
}
var schema52 = { "title": "Call", "description": "What the customer is told on the telephone: three sentences, and prices by the rates of the shop. Nothing is done.", "type": "object", "required": ["method"], "properties": { "method": { "const": "call" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate139(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema52.required, parentSchema: schema52, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("call" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "call" }, message: "must be equal to constant", schema: "call", parentSchema: schema52.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema52.type, parentSchema: schema52, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate139.errors = vErrors;
  return errors === 0;
}
var schema53 = { "title": "Work", "description": "What the customer said about the work, after a conclusion.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "work" }, "params": { "title": "Parameters", "description": "Who said what.", "type": "object", "required": ["answer", "by"], "additionalProperties": false, "properties": { "answer": { "title": "Answer", "description": "What was said.", "enum": ["authorised", "declined"] }, "by": { "title": "By", "description": "Who said it.", "type": "string", "minLength": 1, "maxLength": 200 }, "words": { "title": "Words", "description": "How, and up to what it may cost.", "type": "string", "maxLength": 2e3 } } } } };
function validate141(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema53.required, parentSchema: schema53, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema53.required, parentSchema: schema53, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("work" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "work" }, message: "must be equal to constant", schema: "work", parentSchema: schema53.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.answer === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "answer" }, message: "must have required property 'answer'", schema: schema53.properties.params.required, parentSchema: schema53.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        if (data1.by === void 0) {
          const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "by" }, message: "must have required property 'by'", schema: schema53.properties.params.required, parentSchema: schema53.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "answer" || key0 === "by" || key0 === "words")) {
            const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema53.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err5];
            } else {
              vErrors.push(err5);
            }
            errors++;
          }
        }
        if (data1.answer !== void 0) {
          let data2 = data1.answer;
          if (!(data2 === "authorised" || data2 === "declined")) {
            const err6 = { instancePath: instancePath + "/params/answer", schemaPath: "#/properties/params/properties/answer/enum", keyword: "enum", params: { allowedValues: schema53.properties.params.properties.answer.enum }, message: "must be equal to one of the allowed values", schema: schema53.properties.params.properties.answer.enum, parentSchema: schema53.properties.params.properties.answer, data: data2 };
            if (vErrors === null) {
              vErrors = [err6];
            } else {
              vErrors.push(err6);
            }
            errors++;
          }
        }
        if (data1.by !== void 0) {
          let data3 = data1.by;
          if (typeof data3 === "string") {
            if (func2(data3) > 200) {
              const err7 = { instancePath: instancePath + "/params/by", schemaPath: "#/properties/params/properties/by/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema53.properties.params.properties.by, data: data3 };
              if (vErrors === null) {
                vErrors = [err7];
              } else {
                vErrors.push(err7);
              }
              errors++;
            }
            if (func2(data3) < 1) {
              const err8 = { instancePath: instancePath + "/params/by", schemaPath: "#/properties/params/properties/by/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema53.properties.params.properties.by, data: data3 };
              if (vErrors === null) {
                vErrors = [err8];
              } else {
                vErrors.push(err8);
              }
              errors++;
            }
          } else {
            const err9 = { instancePath: instancePath + "/params/by", schemaPath: "#/properties/params/properties/by/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema53.properties.params.properties.by.type, parentSchema: schema53.properties.params.properties.by, data: data3 };
            if (vErrors === null) {
              vErrors = [err9];
            } else {
              vErrors.push(err9);
            }
            errors++;
          }
        }
        if (data1.words !== void 0) {
          let data4 = data1.words;
          if (typeof data4 === "string") {
            if (func2(data4) > 2e3) {
              const err10 = { instancePath: instancePath + "/params/words", schemaPath: "#/properties/params/properties/words/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema53.properties.params.properties.words, data: data4 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
          } else {
            const err11 = { instancePath: instancePath + "/params/words", schemaPath: "#/properties/params/properties/words/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema53.properties.params.properties.words.type, parentSchema: schema53.properties.params.properties.words, data: data4 };
            if (vErrors === null) {
              vErrors = [err11];
            } else {
              vErrors.push(err11);
            }
            errors++;
          }
        }
      } else {
        const err12 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema53.properties.params.type, parentSchema: schema53.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err12];
        } else {
          vErrors.push(err12);
        }
        errors++;
      }
    }
  } else {
    const err13 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema53.type, parentSchema: schema53, data };
    if (vErrors === null) {
      vErrors = [err13];
    } else {
      vErrors.push(err13);
    }
    errors++;
  }
  validate141.errors = vErrors;
  return errors === 0;
}
var schema54 = { "title": "Close", "description": "Closes the record with what the tests after the repair say.", "type": "object", "required": ["method"], "properties": { "method": { "const": "close" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate142(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema54.required, parentSchema: schema54, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("close" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "close" }, message: "must be equal to constant", schema: "close", parentSchema: schema54.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema54.type, parentSchema: schema54, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate142.errors = vErrors;
  return errors === 0;
}
var schema55 = { "title": "KeepGood", "description": "Keeps the captures that passed after the repair as known-good ones of this vehicle.", "type": "object", "required": ["method"], "properties": { "method": { "const": "keep-good" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate144(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema55.required, parentSchema: schema55, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("keep-good" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "keep-good" }, message: "must be equal to constant", schema: "keep-good", parentSchema: schema55.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema55.type, parentSchema: schema55, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate144.errors = vErrors;
  return errors === 0;
}
var schema56 = { "title": "Pause", "description": "Pauses the session. The end of input does the same.", "type": "object", "required": ["method"], "properties": { "method": { "const": "pause" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate146(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema56.required, parentSchema: schema56, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("pause" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "pause" }, message: "must be equal to constant", schema: "pause", parentSchema: schema56.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema56.type, parentSchema: schema56, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate146.errors = vErrors;
  return errors === 0;
}
var schema57 = { "title": "Resume", "description": "Goes on with a paused session.", "type": "object", "required": ["method"], "properties": { "method": { "const": "resume" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate148(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema57.required, parentSchema: schema57, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("resume" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "resume" }, message: "must be equal to constant", schema: "resume", parentSchema: schema57.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema57.type, parentSchema: schema57, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate148.errors = vErrors;
  return errors === 0;
}
var schema58 = { "title": "Move", "description": "After the disk has refused: goes on in another folder, and saves there what was not saved.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "move" }, "params": { "title": "MoveParameters", "description": "Where to.", "type": "object", "required": ["folder"], "additionalProperties": false, "properties": { "folder": { "title": "Folder", "description": "Path of the folder.", "type": "string", "minLength": 1, "maxLength": 4e3 } } } } };
function validate150(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema58.required, parentSchema: schema58, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema58.required, parentSchema: schema58, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("move" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "move" }, message: "must be equal to constant", schema: "move", parentSchema: schema58.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.folder === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "folder" }, message: "must have required property 'folder'", schema: schema58.properties.params.required, parentSchema: schema58.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "folder")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema58.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.folder !== void 0) {
          let data2 = data1.folder;
          if (typeof data2 === "string") {
            if (func2(data2) > 4e3) {
              const err5 = { instancePath: instancePath + "/params/folder", schemaPath: "#/properties/params/properties/folder/maxLength", keyword: "maxLength", params: { limit: 4e3 }, message: "must NOT have more than 4000 characters", schema: 4e3, parentSchema: schema58.properties.params.properties.folder, data: data2 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err6 = { instancePath: instancePath + "/params/folder", schemaPath: "#/properties/params/properties/folder/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema58.properties.params.properties.folder, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
          } else {
            const err7 = { instancePath: instancePath + "/params/folder", schemaPath: "#/properties/params/properties/folder/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema58.properties.params.properties.folder.type, parentSchema: schema58.properties.params.properties.folder, data: data2 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
      } else {
        const err8 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema58.properties.params.type, parentSchema: schema58.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema58.type, parentSchema: schema58, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate150.errors = vErrors;
  return errors === 0;
}
var schema59 = { "title": "Sketch", "description": "The wiring as lines of text, with the leads of the present step or of a test on it.", "type": "object", "required": ["method"], "properties": { "method": { "const": "sketch" }, "params": { "title": "SketchParameters", "description": "Nothing must be given.", "type": "object", "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Whose leads are shown.", "$ref": "#/definitions/testForm" }, "columns": { "title": "Columns", "description": "How wide; 78 when left out.", "type": "integer", "minimum": 40, "maximum": 400 } } } } };
function validate151(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema59.required, parentSchema: schema59, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("sketch" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "sketch" }, message: "must be equal to constant", schema: "sketch", parentSchema: schema59.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        for (const key0 in data1) {
          if (!(key0 === "test" || key0 === "columns")) {
            const err2 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema59.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err2];
            } else {
              vErrors.push(err2);
            }
            errors++;
          }
        }
        if (data1.test !== void 0) {
          if (!validate36(data1.test, { instancePath: instancePath + "/params/test", parentData: data1, parentDataProperty: "test", rootData })) {
            vErrors = vErrors === null ? validate36.errors : vErrors.concat(validate36.errors);
            errors = vErrors.length;
          }
        }
        if (data1.columns !== void 0) {
          let data3 = data1.columns;
          if (!(typeof data3 == "number" && (!(data3 % 1) && !isNaN(data3)) && isFinite(data3))) {
            const err3 = { instancePath: instancePath + "/params/columns", schemaPath: "#/properties/params/properties/columns/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema59.properties.params.properties.columns.type, parentSchema: schema59.properties.params.properties.columns, data: data3 };
            if (vErrors === null) {
              vErrors = [err3];
            } else {
              vErrors.push(err3);
            }
            errors++;
          }
          if (typeof data3 == "number" && isFinite(data3)) {
            if (data3 > 400 || isNaN(data3)) {
              const err4 = { instancePath: instancePath + "/params/columns", schemaPath: "#/properties/params/properties/columns/maximum", keyword: "maximum", params: { comparison: "<=", limit: 400 }, message: "must be <= 400", schema: 400, parentSchema: schema59.properties.params.properties.columns, data: data3 };
              if (vErrors === null) {
                vErrors = [err4];
              } else {
                vErrors.push(err4);
              }
              errors++;
            }
            if (data3 < 40 || isNaN(data3)) {
              const err5 = { instancePath: instancePath + "/params/columns", schemaPath: "#/properties/params/properties/columns/minimum", keyword: "minimum", params: { comparison: ">=", limit: 40 }, message: "must be >= 40", schema: 40, parentSchema: schema59.properties.params.properties.columns, data: data3 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
          }
        }
      } else {
        const err6 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema59.properties.params.type, parentSchema: schema59.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    }
  } else {
    const err7 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema59.type, parentSchema: schema59, data };
    if (vErrors === null) {
      vErrors = [err7];
    } else {
      vErrors.push(err7);
    }
    errors++;
  }
  validate151.errors = vErrors;
  return errors === 0;
}
var schema60 = { "title": "Sums", "description": "The small sums that fit the present step.", "type": "object", "required": ["method"], "properties": { "method": { "const": "sums" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate153(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema60.required, parentSchema: schema60, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("sums" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "sums" }, message: "must be equal to constant", schema: "sums", parentSchema: schema60.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema60.type, parentSchema: schema60, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate153.errors = vErrors;
  return errors === 0;
}
var schema61 = { "title": "Calculate", "description": "One sum with values of one's own.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "calculate" }, "params": { "title": "CalculateParameters", "description": "As for ohmward calc.", "type": "object", "required": ["line"], "additionalProperties": false, "properties": { "line": { "title": "Line", "description": "Name and options of the sum.", "type": "string", "minLength": 1, "maxLength": 2e3, "examples": ["wire --size 0.5mm2 --length 3m"] } } } } };
function validate155(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema61.required, parentSchema: schema61, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema61.required, parentSchema: schema61, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("calculate" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "calculate" }, message: "must be equal to constant", schema: "calculate", parentSchema: schema61.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.line === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "line" }, message: "must have required property 'line'", schema: schema61.properties.params.required, parentSchema: schema61.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "line")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema61.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.line !== void 0) {
          let data2 = data1.line;
          if (typeof data2 === "string") {
            if (func2(data2) > 2e3) {
              const err5 = { instancePath: instancePath + "/params/line", schemaPath: "#/properties/params/properties/line/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema61.properties.params.properties.line, data: data2 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
            if (func2(data2) < 1) {
              const err6 = { instancePath: instancePath + "/params/line", schemaPath: "#/properties/params/properties/line/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema61.properties.params.properties.line, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
          } else {
            const err7 = { instancePath: instancePath + "/params/line", schemaPath: "#/properties/params/properties/line/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema61.properties.params.properties.line.type, parentSchema: schema61.properties.params.properties.line, data: data2 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
      } else {
        const err8 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema61.properties.params.type, parentSchema: schema61.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema61.type, parentSchema: schema61, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate155.errors = vErrors;
  return errors === 0;
}
var schema62 = { "title": "Measure", "description": "In a drill: makes any test at the vehicle.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "measure" }, "params": { "title": "MeasureParameters", "description": "Which.", "type": "object", "required": ["test"], "additionalProperties": false, "properties": { "test": { "title": "Test", "description": "Any test on this circuit.", "$ref": "#/definitions/testForm" } } } } };
function validate156(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema62.required, parentSchema: schema62, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema62.required, parentSchema: schema62, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("measure" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "measure" }, message: "must be equal to constant", schema: "measure", parentSchema: schema62.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.test === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "test" }, message: "must have required property 'test'", schema: schema62.properties.params.required, parentSchema: schema62.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "test")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema62.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.test !== void 0) {
          if (!validate36(data1.test, { instancePath: instancePath + "/params/test", parentData: data1, parentDataProperty: "test", rootData })) {
            vErrors = vErrors === null ? validate36.errors : vErrors.concat(validate36.errors);
            errors = vErrors.length;
          }
        }
      } else {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema62.properties.params.type, parentSchema: schema62.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
  } else {
    const err6 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema62.type, parentSchema: schema62, data };
    if (vErrors === null) {
      vErrors = [err6];
    } else {
      vErrors.push(err6);
    }
    errors++;
  }
  validate156.errors = vErrors;
  return errors === 0;
}
var schema63 = { "title": "Follow", "description": "In a drill: does the present step of the procedure.", "type": "object", "required": ["method"], "properties": { "method": { "const": "follow" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate158(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema63.required, parentSchema: schema63, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("follow" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "follow" }, message: "must be equal to constant", schema: "follow", parentSchema: schema63.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema63.type, parentSchema: schema63, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate158.errors = vErrors;
  return errors === 0;
}
var schema64 = { "title": "Repairs", "description": "In a drill: what the diagnosis can be.", "type": "object", "required": ["method"], "properties": { "method": { "const": "repairs" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate160(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema64.required, parentSchema: schema64, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("repairs" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "repairs" }, message: "must be equal to constant", schema: "repairs", parentSchema: schema64.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema64.type, parentSchema: schema64, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate160.errors = vErrors;
  return errors === 0;
}
var schema65 = { "title": "Diagnose", "description": "In a drill: gives the diagnosis, which ends it.", "type": "object", "required": ["method", "params"], "properties": { "method": { "const": "diagnose" }, "params": { "title": "DiagnoseParameters", "description": "Of the answer to repairs.", "type": "object", "required": ["repairs"], "additionalProperties": false, "properties": { "repairs": { "title": "Repairs", "description": "By their names; none gives it up.", "type": "array", "maxItems": 10, "uniqueItems": true, "items": { "$ref": "#/definitions/name" } } } } } };
function validate162(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema65.required, parentSchema: schema65, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.params === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "params" }, message: "must have required property 'params'", schema: schema65.required, parentSchema: schema65, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("diagnose" !== data0) {
        const err2 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "diagnose" }, message: "must be equal to constant", schema: "diagnose", parentSchema: schema65.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data1 = data.params;
      if (data1 && typeof data1 == "object" && !Array.isArray(data1)) {
        if (data1.repairs === void 0) {
          const err3 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/required", keyword: "required", params: { missingProperty: "repairs" }, message: "must have required property 'repairs'", schema: schema65.properties.params.required, parentSchema: schema65.properties.params, data: data1 };
          if (vErrors === null) {
            vErrors = [err3];
          } else {
            vErrors.push(err3);
          }
          errors++;
        }
        for (const key0 in data1) {
          if (!(key0 === "repairs")) {
            const err4 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema65.properties.params, data: data1 };
            if (vErrors === null) {
              vErrors = [err4];
            } else {
              vErrors.push(err4);
            }
            errors++;
          }
        }
        if (data1.repairs !== void 0) {
          let data2 = data1.repairs;
          if (Array.isArray(data2)) {
            if (data2.length > 10) {
              const err5 = { instancePath: instancePath + "/params/repairs", schemaPath: "#/properties/params/properties/repairs/maxItems", keyword: "maxItems", params: { limit: 10 }, message: "must NOT have more than 10 items", schema: 10, parentSchema: schema65.properties.params.properties.repairs, data: data2 };
              if (vErrors === null) {
                vErrors = [err5];
              } else {
                vErrors.push(err5);
              }
              errors++;
            }
            const len0 = data2.length;
            for (let i0 = 0; i0 < len0; i0++) {
              if (!validate28(data2[i0], { instancePath: instancePath + "/params/repairs/" + i0, parentData: data2, parentDataProperty: i0, rootData })) {
                vErrors = vErrors === null ? validate28.errors : vErrors.concat(validate28.errors);
                errors = vErrors.length;
              }
            }
            let i1 = data2.length;
            let j0;
            if (i1 > 1) {
              outer0: for (; i1--; ) {
                for (j0 = i1; j0--; ) {
                  if (func0(data2[i1], data2[j0])) {
                    const err6 = { instancePath: instancePath + "/params/repairs", schemaPath: "#/properties/params/properties/repairs/uniqueItems", keyword: "uniqueItems", params: { i: i1, j: j0 }, message: "must NOT have duplicate items (items ## " + j0 + " and " + i1 + " are identical)", schema: true, parentSchema: schema65.properties.params.properties.repairs, data: data2 };
                    if (vErrors === null) {
                      vErrors = [err6];
                    } else {
                      vErrors.push(err6);
                    }
                    errors++;
                    break outer0;
                  }
                }
              }
            }
          } else {
            const err7 = { instancePath: instancePath + "/params/repairs", schemaPath: "#/properties/params/properties/repairs/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema65.properties.params.properties.repairs.type, parentSchema: schema65.properties.params.properties.repairs, data: data2 };
            if (vErrors === null) {
              vErrors = [err7];
            } else {
              vErrors.push(err7);
            }
            errors++;
          }
        }
      } else {
        const err8 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema65.properties.params.type, parentSchema: schema65.properties.params, data: data1 };
        if (vErrors === null) {
          vErrors = [err8];
        } else {
          vErrors.push(err8);
        }
        errors++;
      }
    }
  } else {
    const err9 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema65.type, parentSchema: schema65, data };
    if (vErrors === null) {
      vErrors = [err9];
    } else {
      vErrors.push(err9);
    }
    errors++;
  }
  validate162.errors = vErrors;
  return errors === 0;
}
var schema66 = { "title": "Debrief", "description": "In a drill that has ended: what was wrong, what the readings said, the score.", "type": "object", "required": ["method"], "properties": { "method": { "const": "debrief" }, "params": { "title": "Parameters", "description": "None.", "$ref": "#/definitions/none" } } };
function validate164(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.method === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema66.required, parentSchema: schema66, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method !== void 0) {
      let data0 = data.method;
      if ("debrief" !== data0) {
        const err1 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/const", keyword: "const", params: { allowedValue: "debrief" }, message: "must be equal to constant", schema: "debrief", parentSchema: schema66.properties.method, data: data0 };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      if (!validate24(data.params, { instancePath: instancePath + "/params", parentData: data, parentDataProperty: "params", rootData })) {
        vErrors = vErrors === null ? validate24.errors : vErrors.concat(validate24.errors);
        errors = vErrors.length;
      }
    }
  } else {
    const err2 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema66.type, parentSchema: schema66, data };
    if (vErrors === null) {
      vErrors = [err2];
    } else {
      vErrors.push(err2);
    }
    errors++;
  }
  validate164.errors = vErrors;
  return errors === 0;
}
function validate21(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.jsonrpc === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "jsonrpc" }, message: "must have required property 'jsonrpc'", schema: schema6.required, parentSchema: schema6, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    if (data.method === void 0) {
      const err1 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "method" }, message: "must have required property 'method'", schema: schema6.required, parentSchema: schema6, data };
      if (vErrors === null) {
        vErrors = [err1];
      } else {
        vErrors.push(err1);
      }
      errors++;
    }
    if (data.jsonrpc !== void 0) {
      let data0 = data.jsonrpc;
      if ("2.0" !== data0) {
        const err2 = { instancePath: instancePath + "/jsonrpc", schemaPath: "#/properties/jsonrpc/const", keyword: "const", params: { allowedValue: "2.0" }, message: "must be equal to constant", schema: "2.0", parentSchema: schema6.properties.jsonrpc, data: data0 };
        if (vErrors === null) {
          vErrors = [err2];
        } else {
          vErrors.push(err2);
        }
        errors++;
      }
    }
    if (data.id !== void 0) {
      let data1 = data.id;
      if (typeof data1 !== "string" && !(typeof data1 == "number" && isFinite(data1)) && data1 !== null) {
        const err3 = { instancePath: instancePath + "/id", schemaPath: "#/properties/id/type", keyword: "type", params: { type: schema6.properties.id.type }, message: "must be string,number,null", schema: schema6.properties.id.type, parentSchema: schema6.properties.id, data: data1 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.method !== void 0) {
      let data2 = data.method;
      if (typeof data2 !== "string") {
        const err4 = { instancePath: instancePath + "/method", schemaPath: "#/properties/method/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema6.properties.method.type, parentSchema: schema6.properties.method, data: data2 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.params !== void 0) {
      let data3 = data.params;
      if (!(data3 && typeof data3 == "object" && !Array.isArray(data3))) {
        const err5 = { instancePath: instancePath + "/params", schemaPath: "#/properties/params/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema6.properties.params.type, parentSchema: schema6.properties.params, data: data3 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
    }
    const tag0 = data.method;
    if (typeof tag0 == "string") {
      if (tag0 === "hello") {
        if (!validate22(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate22.errors : vErrors.concat(validate22.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "procedures") {
        if (!validate23(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate23.errors : vErrors.concat(validate23.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "sheet") {
        if (!validate26(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate26.errors : vErrors.concat(validate26.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "begin") {
        if (!validate27(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate27.errors : vErrors.concat(validate27.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "state") {
        if (!validate30(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate30.errors : vErrors.concat(validate30.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "events") {
        if (!validate32(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate32.errors : vErrors.concat(validate32.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "acknowledge") {
        if (!validate33(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate33.errors : vErrors.concat(validate33.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "reading") {
        if (!validate66(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate66.errors : vErrors.concat(validate66.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "choose") {
        if (!validate69(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate69.errors : vErrors.concat(validate69.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "done") {
        if (!validate71(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate71.errors : vErrors.concat(validate71.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "take") {
        if (!validate73(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate73.errors : vErrors.concat(validate73.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "cannot") {
        if (!validate75(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate75.errors : vErrors.concat(validate75.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "prepare") {
        if (!validate78(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate78.errors : vErrors.concat(validate78.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "tests") {
        if (!validate80(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate80.errors : vErrors.concat(validate80.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "test") {
        if (!validate82(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate82.errors : vErrors.concat(validate82.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "note") {
        if (!validate87(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate87.errors : vErrors.concat(validate87.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "back") {
        if (!validate89(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate89.errors : vErrors.concat(validate89.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "values") {
        if (!validate90(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate90.errors : vErrors.concat(validate90.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "set-value") {
        if (!validate92(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate92.errors : vErrors.concat(validate92.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "prepare-place") {
        if (!validate93(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate93.errors : vErrors.concat(validate93.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "place") {
        if (!validate98(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate98.errors : vErrors.concat(validate98.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "watched") {
        if (!validate104(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate104.errors : vErrors.concat(validate104.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "drive-plan") {
        if (!validate106(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate106.errors : vErrors.concat(validate106.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "capture") {
        if (!validate108(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate108.errors : vErrors.concat(validate108.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "captures") {
        if (!validate111(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate111.errors : vErrors.concat(validate111.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "instruments") {
        if (!validate112(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate112.errors : vErrors.concat(validate112.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "suspects") {
        if (!validate117(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate117.errors : vErrors.concat(validate117.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "next") {
        if (!validate119(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate119.errors : vErrors.concat(validate119.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "aside") {
        if (!validate121(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate121.errors : vErrors.concat(validate121.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "weigh") {
        if (!validate125(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate125.errors : vErrors.concat(validate125.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "accept") {
        if (!validate127(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate127.errors : vErrors.concat(validate127.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "conclude") {
        if (!validate128(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate128.errors : vErrors.concat(validate128.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "retests") {
        if (!validate131(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate131.errors : vErrors.concat(validate131.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "retest") {
        if (!validate133(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate133.errors : vErrors.concat(validate133.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "drive") {
        if (!validate138(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate138.errors : vErrors.concat(validate138.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "call") {
        if (!validate139(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate139.errors : vErrors.concat(validate139.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "work") {
        if (!validate141(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate141.errors : vErrors.concat(validate141.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "close") {
        if (!validate142(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate142.errors : vErrors.concat(validate142.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "keep-good") {
        if (!validate144(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate144.errors : vErrors.concat(validate144.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "pause") {
        if (!validate146(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate146.errors : vErrors.concat(validate146.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "resume") {
        if (!validate148(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate148.errors : vErrors.concat(validate148.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "move") {
        if (!validate150(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate150.errors : vErrors.concat(validate150.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "sketch") {
        if (!validate151(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate151.errors : vErrors.concat(validate151.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "sums") {
        if (!validate153(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate153.errors : vErrors.concat(validate153.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "calculate") {
        if (!validate155(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate155.errors : vErrors.concat(validate155.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "measure") {
        if (!validate156(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate156.errors : vErrors.concat(validate156.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "follow") {
        if (!validate158(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate158.errors : vErrors.concat(validate158.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "repairs") {
        if (!validate160(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate160.errors : vErrors.concat(validate160.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "diagnose") {
        if (!validate162(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate162.errors : vErrors.concat(validate162.errors);
          errors = vErrors.length;
        }
      } else if (tag0 === "debrief") {
        if (!validate164(data, { instancePath, parentData, parentDataProperty, rootData })) {
          vErrors = vErrors === null ? validate164.errors : vErrors.concat(validate164.errors);
          errors = vErrors.length;
        }
      } else {
        const err6 = { instancePath, schemaPath: "#/discriminator", keyword: "discriminator", params: { error: "mapping", tag: "method", tagValue: tag0 }, message: 'value of tag "method" must be in oneOf', schema: schema6.discriminator, parentSchema: schema6, data };
        if (vErrors === null) {
          vErrors = [err6];
        } else {
          vErrors.push(err6);
        }
        errors++;
      }
    } else {
      const err7 = { instancePath, schemaPath: "#/discriminator", keyword: "discriminator", params: { error: "tag", tag: "method", tagValue: tag0 }, message: 'tag "method" must be string', schema: schema6.discriminator, parentSchema: schema6, data };
      if (vErrors === null) {
        vErrors = [err7];
      } else {
        vErrors.push(err7);
      }
      errors++;
    }
  } else {
    const err8 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema6.type, parentSchema: schema6, data };
    if (vErrors === null) {
      vErrors = [err8];
    } else {
      vErrors.push(err8);
    }
    errors++;
  }
  validate21.errors = vErrors;
  return errors === 0;
}
export {
  stdin_default as default,
  validate
};
