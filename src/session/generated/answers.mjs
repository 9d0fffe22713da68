// Made from docs/schema/answers.schema.json by scripts/schemas.mjs. Change the schema, not this file.
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

// <stdin>
var validate = validate10;
var stdin_default = validate10;
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "answers.schema.json", "title": "Answers", "description": "What a person would do in a session, in order, for a run without one: ohmward run PROCEDURE --answers FILE.", "type": "object", "required": ["answers"], "additionalProperties": false, "properties": { "procedure": { "title": "Procedure", "description": "Name of the procedure; may be left out when the command line names it.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "answers": { "title": "Answers", "description": "In the order in which they are given.", "type": "array", "minItems": 1, "maxItems": 1e3, "items": { "title": "AnswerDraft", "type": "object", "minProperties": 1, "additionalProperties": false, "properties": { "step": { "title": "Step", "description": "The step this belongs to; the run stops when another is asked.", "type": "string", "maxLength": 200, "examples": ["feed/to-battery"] }, "reading": { "title": "Reading", "description": "As a person types it.", "type": ["string", "number"], "examples": ["4.98 V"] }, "choose": { "title": "Choose", "description": "Name of an outcome, or of a look.", "type": "string", "examples": ["flat-high"] }, "done": { "title": "Done", "const": true }, "cannot": { "title": "Cannot do", "description": "Why.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "acknowledge": { "title": "Acknowledge", "description": "The cautions of this step are read and acknowledged.", "const": true }, "note": { "title": "Note", "description": "A remark that goes into the record.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "back": { "title": "Back", "description": "Takes back the last answer.", "const": true }, "pause": { "title": "Pause", "const": true }, "conclude": { "title": "Conclude", "description": "Accepts the conclusion.", "const": true } } } } } };
var pattern0 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var func2 = Object.prototype.hasOwnProperty;
var func3 = require_ucs2length().default;
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.answers === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "answers" }, message: "must have required property 'answers'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "procedure" || key0 === "answers")) {
        const err1 = { instancePath, schemaPath: "#/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key0 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11, data };
        if (vErrors === null) {
          vErrors = [err1];
        } else {
          vErrors.push(err1);
        }
        errors++;
      }
    }
    if (data.procedure !== void 0) {
      let data0 = data.procedure;
      if (typeof data0 === "string") {
        if (!pattern0.test(data0)) {
          const err2 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/pattern", keyword: "pattern", params: { pattern: "^[a-z][a-z0-9-]{0,60}$" }, message: 'must match pattern "^[a-z][a-z0-9-]{0,60}$"', schema: "^[a-z][a-z0-9-]{0,60}$", parentSchema: schema11.properties.procedure, data: data0 };
          if (vErrors === null) {
            vErrors = [err2];
          } else {
            vErrors.push(err2);
          }
          errors++;
        }
      } else {
        const err3 = { instancePath: instancePath + "/procedure", schemaPath: "#/properties/procedure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.procedure.type, parentSchema: schema11.properties.procedure, data: data0 };
        if (vErrors === null) {
          vErrors = [err3];
        } else {
          vErrors.push(err3);
        }
        errors++;
      }
    }
    if (data.answers !== void 0) {
      let data1 = data.answers;
      if (Array.isArray(data1)) {
        if (data1.length > 1e3) {
          const err4 = { instancePath: instancePath + "/answers", schemaPath: "#/properties/answers/maxItems", keyword: "maxItems", params: { limit: 1e3 }, message: "must NOT have more than 1000 items", schema: 1e3, parentSchema: schema11.properties.answers, data: data1 };
          if (vErrors === null) {
            vErrors = [err4];
          } else {
            vErrors.push(err4);
          }
          errors++;
        }
        if (data1.length < 1) {
          const err5 = { instancePath: instancePath + "/answers", schemaPath: "#/properties/answers/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.answers, data: data1 };
          if (vErrors === null) {
            vErrors = [err5];
          } else {
            vErrors.push(err5);
          }
          errors++;
        }
        const len0 = data1.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data2 = data1[i0];
          if (data2 && typeof data2 == "object" && !Array.isArray(data2)) {
            if (Object.keys(data2).length < 1) {
              const err6 = { instancePath: instancePath + "/answers/" + i0, schemaPath: "#/properties/answers/items/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema11.properties.answers.items, data: data2 };
              if (vErrors === null) {
                vErrors = [err6];
              } else {
                vErrors.push(err6);
              }
              errors++;
            }
            for (const key1 in data2) {
              if (!func2.call(schema11.properties.answers.items.properties, key1)) {
                const err7 = { instancePath: instancePath + "/answers/" + i0, schemaPath: "#/properties/answers/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.answers.items, data: data2 };
                if (vErrors === null) {
                  vErrors = [err7];
                } else {
                  vErrors.push(err7);
                }
                errors++;
              }
            }
            if (data2.step !== void 0) {
              let data3 = data2.step;
              if (typeof data3 === "string") {
                if (func3(data3) > 200) {
                  const err8 = { instancePath: instancePath + "/answers/" + i0 + "/step", schemaPath: "#/properties/answers/items/properties/step/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.answers.items.properties.step, data: data3 };
                  if (vErrors === null) {
                    vErrors = [err8];
                  } else {
                    vErrors.push(err8);
                  }
                  errors++;
                }
              } else {
                const err9 = { instancePath: instancePath + "/answers/" + i0 + "/step", schemaPath: "#/properties/answers/items/properties/step/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.step.type, parentSchema: schema11.properties.answers.items.properties.step, data: data3 };
                if (vErrors === null) {
                  vErrors = [err9];
                } else {
                  vErrors.push(err9);
                }
                errors++;
              }
            }
            if (data2.reading !== void 0) {
              let data4 = data2.reading;
              if (typeof data4 !== "string" && !(typeof data4 == "number" && isFinite(data4))) {
                const err10 = { instancePath: instancePath + "/answers/" + i0 + "/reading", schemaPath: "#/properties/answers/items/properties/reading/type", keyword: "type", params: { type: schema11.properties.answers.items.properties.reading.type }, message: "must be string,number", schema: schema11.properties.answers.items.properties.reading.type, parentSchema: schema11.properties.answers.items.properties.reading, data: data4 };
                if (vErrors === null) {
                  vErrors = [err10];
                } else {
                  vErrors.push(err10);
                }
                errors++;
              }
            }
            if (data2.choose !== void 0) {
              let data5 = data2.choose;
              if (typeof data5 !== "string") {
                const err11 = { instancePath: instancePath + "/answers/" + i0 + "/choose", schemaPath: "#/properties/answers/items/properties/choose/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.choose.type, parentSchema: schema11.properties.answers.items.properties.choose, data: data5 };
                if (vErrors === null) {
                  vErrors = [err11];
                } else {
                  vErrors.push(err11);
                }
                errors++;
              }
            }
            if (data2.done !== void 0) {
              let data6 = data2.done;
              if (true !== data6) {
                const err12 = { instancePath: instancePath + "/answers/" + i0 + "/done", schemaPath: "#/properties/answers/items/properties/done/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.done, data: data6 };
                if (vErrors === null) {
                  vErrors = [err12];
                } else {
                  vErrors.push(err12);
                }
                errors++;
              }
            }
            if (data2.cannot !== void 0) {
              let data7 = data2.cannot;
              if (typeof data7 === "string") {
                if (func3(data7) > 2e3) {
                  const err13 = { instancePath: instancePath + "/answers/" + i0 + "/cannot", schemaPath: "#/properties/answers/items/properties/cannot/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.answers.items.properties.cannot, data: data7 };
                  if (vErrors === null) {
                    vErrors = [err13];
                  } else {
                    vErrors.push(err13);
                  }
                  errors++;
                }
                if (func3(data7) < 1) {
                  const err14 = { instancePath: instancePath + "/answers/" + i0 + "/cannot", schemaPath: "#/properties/answers/items/properties/cannot/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.cannot, data: data7 };
                  if (vErrors === null) {
                    vErrors = [err14];
                  } else {
                    vErrors.push(err14);
                  }
                  errors++;
                }
              } else {
                const err15 = { instancePath: instancePath + "/answers/" + i0 + "/cannot", schemaPath: "#/properties/answers/items/properties/cannot/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.cannot.type, parentSchema: schema11.properties.answers.items.properties.cannot, data: data7 };
                if (vErrors === null) {
                  vErrors = [err15];
                } else {
                  vErrors.push(err15);
                }
                errors++;
              }
            }
            if (data2.acknowledge !== void 0) {
              let data8 = data2.acknowledge;
              if (true !== data8) {
                const err16 = { instancePath: instancePath + "/answers/" + i0 + "/acknowledge", schemaPath: "#/properties/answers/items/properties/acknowledge/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.acknowledge, data: data8 };
                if (vErrors === null) {
                  vErrors = [err16];
                } else {
                  vErrors.push(err16);
                }
                errors++;
              }
            }
            if (data2.note !== void 0) {
              let data9 = data2.note;
              if (typeof data9 === "string") {
                if (func3(data9) > 2e3) {
                  const err17 = { instancePath: instancePath + "/answers/" + i0 + "/note", schemaPath: "#/properties/answers/items/properties/note/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.answers.items.properties.note, data: data9 };
                  if (vErrors === null) {
                    vErrors = [err17];
                  } else {
                    vErrors.push(err17);
                  }
                  errors++;
                }
                if (func3(data9) < 1) {
                  const err18 = { instancePath: instancePath + "/answers/" + i0 + "/note", schemaPath: "#/properties/answers/items/properties/note/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.answers.items.properties.note, data: data9 };
                  if (vErrors === null) {
                    vErrors = [err18];
                  } else {
                    vErrors.push(err18);
                  }
                  errors++;
                }
              } else {
                const err19 = { instancePath: instancePath + "/answers/" + i0 + "/note", schemaPath: "#/properties/answers/items/properties/note/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.answers.items.properties.note.type, parentSchema: schema11.properties.answers.items.properties.note, data: data9 };
                if (vErrors === null) {
                  vErrors = [err19];
                } else {
                  vErrors.push(err19);
                }
                errors++;
              }
            }
            if (data2.back !== void 0) {
              let data10 = data2.back;
              if (true !== data10) {
                const err20 = { instancePath: instancePath + "/answers/" + i0 + "/back", schemaPath: "#/properties/answers/items/properties/back/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.back, data: data10 };
                if (vErrors === null) {
                  vErrors = [err20];
                } else {
                  vErrors.push(err20);
                }
                errors++;
              }
            }
            if (data2.pause !== void 0) {
              let data11 = data2.pause;
              if (true !== data11) {
                const err21 = { instancePath: instancePath + "/answers/" + i0 + "/pause", schemaPath: "#/properties/answers/items/properties/pause/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.pause, data: data11 };
                if (vErrors === null) {
                  vErrors = [err21];
                } else {
                  vErrors.push(err21);
                }
                errors++;
              }
            }
            if (data2.conclude !== void 0) {
              let data12 = data2.conclude;
              if (true !== data12) {
                const err22 = { instancePath: instancePath + "/answers/" + i0 + "/conclude", schemaPath: "#/properties/answers/items/properties/conclude/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.answers.items.properties.conclude, data: data12 };
                if (vErrors === null) {
                  vErrors = [err22];
                } else {
                  vErrors.push(err22);
                }
                errors++;
              }
            }
          } else {
            const err23 = { instancePath: instancePath + "/answers/" + i0, schemaPath: "#/properties/answers/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.answers.items.type, parentSchema: schema11.properties.answers.items, data: data2 };
            if (vErrors === null) {
              vErrors = [err23];
            } else {
              vErrors.push(err23);
            }
            errors++;
          }
        }
      } else {
        const err24 = { instancePath: instancePath + "/answers", schemaPath: "#/properties/answers/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.answers.type, parentSchema: schema11.properties.answers, data: data1 };
        if (vErrors === null) {
          vErrors = [err24];
        } else {
          vErrors.push(err24);
        }
        errors++;
      }
    }
  } else {
    const err25 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err25];
    } else {
      vErrors.push(err25);
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
