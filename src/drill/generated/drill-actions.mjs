// Made from docs/schema/drill-actions.schema.json by scripts/schemas.mjs. Change the schema, not this file.
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
var schema11 = { "$schema": "http://json-schema.org/draft-07/schema#", "$id": "drill-actions.schema.json", "title": "Drill actions", "description": "What a student would do in a drill, in order, for a run without one: ohmward drill --actions FILE.", "type": "object", "required": ["actions"], "additionalProperties": false, "properties": { "procedure": { "title": "Procedure", "description": "Name of a procedure or of a circuit.", "type": "string", "pattern": "^[a-z][a-z0-9-]{0,60}$" }, "level": { "title": "Level", "description": "How much help there is, or what makes it harder.", "enum": ["named", "unnamed", "blind", "intermittent", "double", "misled"] }, "seed": { "title": "Seed", "description": "Number that fixes the hidden fault and the tolerances.", "type": "integer", "minimum": 0, "maximum": 4294967295 }, "actions": { "title": "Actions", "description": "In the order in which they are done.", "type": "array", "minItems": 1, "maxItems": 500, "items": { "title": "ActionDraft", "type": "object", "minProperties": 1, "additionalProperties": false, "properties": { "measure": { "title": "Measure", "description": "Instrument and leads, red first.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["volts sensor.feed battery.negative"] }, "capture": { "title": "Capture", "description": "The scope saves what it sees: its tip, its ground.", "type": "string", "minLength": 1, "maxLength": 200, "examples": ["sensor.signal battery.negative"] }, "state": { "title": "Vehicle state", "description": "State of the vehicle.", "enum": ["key-off", "key-on", "cranking", "running"], "default": "key-on" }, "unplug": { "title": "Unplugged", "description": "Parts whose connector is off.", "type": "array", "maxItems": 20, "items": { "type": "string", "maxLength": 100 } }, "bridges": { "title": "Clipped in", "description": "Two terminals and what is between: lead, test-light, lamp or ohms.", "type": "array", "maxItems": 6, "items": { "type": "string", "maxLength": 200, "examples": ["sensor.signal battery.negative 470 ohm"] } }, "spare": { "title": "A good spare sensor is plugged in", "description": "Instead of the own one of the vehicle.", "type": "boolean" }, "moving": { "title": "The target passes the sensor", "description": "By cranking, by hand or with a magnet.", "type": "boolean" }, "wiggle": { "title": "Harness and connectors are moved meanwhile", "description": "Brings out an intermittent fault.", "type": "boolean" }, "test": { "title": "Standard test", "description": 'Name of a standard test instead of a measurement; see them with the word "tests" in the dialogue.', "type": "string", "maxLength": 200, "examples": ["sensor.feed.volts"] }, "follow": { "title": "Do the procedure's present step", "const": true }, "acknowledge": { "title": "Acknowledge", "description": "The cautions of this test or step are read and acknowledged.", "const": true }, "note": { "title": "Note", "description": "A remark that goes into the record.", "type": "string", "minLength": 1, "maxLength": 2e3 }, "diagnose": { "title": "Diagnosis", "description": "Names of repairs.", "type": "array", "minItems": 1, "maxItems": 2, "items": { "type": "string", "maxLength": 200, "examples": ["wire.signal"] } }, "give-up": { "title": "Give up", "const": true } } } } } };
var pattern0 = new RegExp("^[a-z][a-z0-9-]{0,60}$", "u");
var func2 = Object.prototype.hasOwnProperty;
var func3 = require_ucs2length().default;
function validate10(data, { instancePath = "", parentData, parentDataProperty, rootData = data } = {}) {
  ;
  let vErrors = null;
  let errors = 0;
  if (data && typeof data == "object" && !Array.isArray(data)) {
    if (data.actions === void 0) {
      const err0 = { instancePath, schemaPath: "#/required", keyword: "required", params: { missingProperty: "actions" }, message: "must have required property 'actions'", schema: schema11.required, parentSchema: schema11, data };
      if (vErrors === null) {
        vErrors = [err0];
      } else {
        vErrors.push(err0);
      }
      errors++;
    }
    for (const key0 in data) {
      if (!(key0 === "procedure" || key0 === "level" || key0 === "seed" || key0 === "actions")) {
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
    if (data.level !== void 0) {
      let data1 = data.level;
      if (!(data1 === "named" || data1 === "unnamed" || data1 === "blind" || data1 === "intermittent" || data1 === "double" || data1 === "misled")) {
        const err4 = { instancePath: instancePath + "/level", schemaPath: "#/properties/level/enum", keyword: "enum", params: { allowedValues: schema11.properties.level.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.level.enum, parentSchema: schema11.properties.level, data: data1 };
        if (vErrors === null) {
          vErrors = [err4];
        } else {
          vErrors.push(err4);
        }
        errors++;
      }
    }
    if (data.seed !== void 0) {
      let data2 = data.seed;
      if (!(typeof data2 == "number" && (!(data2 % 1) && !isNaN(data2)) && isFinite(data2))) {
        const err5 = { instancePath: instancePath + "/seed", schemaPath: "#/properties/seed/type", keyword: "type", params: { type: "integer" }, message: "must be integer", schema: schema11.properties.seed.type, parentSchema: schema11.properties.seed, data: data2 };
        if (vErrors === null) {
          vErrors = [err5];
        } else {
          vErrors.push(err5);
        }
        errors++;
      }
      if (typeof data2 == "number" && isFinite(data2)) {
        if (data2 > 4294967295 || isNaN(data2)) {
          const err6 = { instancePath: instancePath + "/seed", schemaPath: "#/properties/seed/maximum", keyword: "maximum", params: { comparison: "<=", limit: 4294967295 }, message: "must be <= 4294967295", schema: 4294967295, parentSchema: schema11.properties.seed, data: data2 };
          if (vErrors === null) {
            vErrors = [err6];
          } else {
            vErrors.push(err6);
          }
          errors++;
        }
        if (data2 < 0 || isNaN(data2)) {
          const err7 = { instancePath: instancePath + "/seed", schemaPath: "#/properties/seed/minimum", keyword: "minimum", params: { comparison: ">=", limit: 0 }, message: "must be >= 0", schema: 0, parentSchema: schema11.properties.seed, data: data2 };
          if (vErrors === null) {
            vErrors = [err7];
          } else {
            vErrors.push(err7);
          }
          errors++;
        }
      }
    }
    if (data.actions !== void 0) {
      let data3 = data.actions;
      if (Array.isArray(data3)) {
        if (data3.length > 500) {
          const err8 = { instancePath: instancePath + "/actions", schemaPath: "#/properties/actions/maxItems", keyword: "maxItems", params: { limit: 500 }, message: "must NOT have more than 500 items", schema: 500, parentSchema: schema11.properties.actions, data: data3 };
          if (vErrors === null) {
            vErrors = [err8];
          } else {
            vErrors.push(err8);
          }
          errors++;
        }
        if (data3.length < 1) {
          const err9 = { instancePath: instancePath + "/actions", schemaPath: "#/properties/actions/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.actions, data: data3 };
          if (vErrors === null) {
            vErrors = [err9];
          } else {
            vErrors.push(err9);
          }
          errors++;
        }
        const len0 = data3.length;
        for (let i0 = 0; i0 < len0; i0++) {
          let data4 = data3[i0];
          if (data4 && typeof data4 == "object" && !Array.isArray(data4)) {
            if (Object.keys(data4).length < 1) {
              const err10 = { instancePath: instancePath + "/actions/" + i0, schemaPath: "#/properties/actions/items/minProperties", keyword: "minProperties", params: { limit: 1 }, message: "must NOT have fewer than 1 properties", schema: 1, parentSchema: schema11.properties.actions.items, data: data4 };
              if (vErrors === null) {
                vErrors = [err10];
              } else {
                vErrors.push(err10);
              }
              errors++;
            }
            for (const key1 in data4) {
              if (!func2.call(schema11.properties.actions.items.properties, key1)) {
                const err11 = { instancePath: instancePath + "/actions/" + i0, schemaPath: "#/properties/actions/items/additionalProperties", keyword: "additionalProperties", params: { additionalProperty: key1 }, message: "must NOT have additional properties", schema: false, parentSchema: schema11.properties.actions.items, data: data4 };
                if (vErrors === null) {
                  vErrors = [err11];
                } else {
                  vErrors.push(err11);
                }
                errors++;
              }
            }
            if (data4.measure !== void 0) {
              let data5 = data4.measure;
              if (typeof data5 === "string") {
                if (func3(data5) > 200) {
                  const err12 = { instancePath: instancePath + "/actions/" + i0 + "/measure", schemaPath: "#/properties/actions/items/properties/measure/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.actions.items.properties.measure, data: data5 };
                  if (vErrors === null) {
                    vErrors = [err12];
                  } else {
                    vErrors.push(err12);
                  }
                  errors++;
                }
                if (func3(data5) < 1) {
                  const err13 = { instancePath: instancePath + "/actions/" + i0 + "/measure", schemaPath: "#/properties/actions/items/properties/measure/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.actions.items.properties.measure, data: data5 };
                  if (vErrors === null) {
                    vErrors = [err13];
                  } else {
                    vErrors.push(err13);
                  }
                  errors++;
                }
              } else {
                const err14 = { instancePath: instancePath + "/actions/" + i0 + "/measure", schemaPath: "#/properties/actions/items/properties/measure/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.actions.items.properties.measure.type, parentSchema: schema11.properties.actions.items.properties.measure, data: data5 };
                if (vErrors === null) {
                  vErrors = [err14];
                } else {
                  vErrors.push(err14);
                }
                errors++;
              }
            }
            if (data4.capture !== void 0) {
              let data6 = data4.capture;
              if (typeof data6 === "string") {
                if (func3(data6) > 200) {
                  const err15 = { instancePath: instancePath + "/actions/" + i0 + "/capture", schemaPath: "#/properties/actions/items/properties/capture/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.actions.items.properties.capture, data: data6 };
                  if (vErrors === null) {
                    vErrors = [err15];
                  } else {
                    vErrors.push(err15);
                  }
                  errors++;
                }
                if (func3(data6) < 1) {
                  const err16 = { instancePath: instancePath + "/actions/" + i0 + "/capture", schemaPath: "#/properties/actions/items/properties/capture/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.actions.items.properties.capture, data: data6 };
                  if (vErrors === null) {
                    vErrors = [err16];
                  } else {
                    vErrors.push(err16);
                  }
                  errors++;
                }
              } else {
                const err17 = { instancePath: instancePath + "/actions/" + i0 + "/capture", schemaPath: "#/properties/actions/items/properties/capture/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.actions.items.properties.capture.type, parentSchema: schema11.properties.actions.items.properties.capture, data: data6 };
                if (vErrors === null) {
                  vErrors = [err17];
                } else {
                  vErrors.push(err17);
                }
                errors++;
              }
            }
            if (data4.state !== void 0) {
              let data7 = data4.state;
              if (!(data7 === "key-off" || data7 === "key-on" || data7 === "cranking" || data7 === "running")) {
                const err18 = { instancePath: instancePath + "/actions/" + i0 + "/state", schemaPath: "#/properties/actions/items/properties/state/enum", keyword: "enum", params: { allowedValues: schema11.properties.actions.items.properties.state.enum }, message: "must be equal to one of the allowed values", schema: schema11.properties.actions.items.properties.state.enum, parentSchema: schema11.properties.actions.items.properties.state, data: data7 };
                if (vErrors === null) {
                  vErrors = [err18];
                } else {
                  vErrors.push(err18);
                }
                errors++;
              }
            }
            if (data4.unplug !== void 0) {
              let data8 = data4.unplug;
              if (Array.isArray(data8)) {
                if (data8.length > 20) {
                  const err19 = { instancePath: instancePath + "/actions/" + i0 + "/unplug", schemaPath: "#/properties/actions/items/properties/unplug/maxItems", keyword: "maxItems", params: { limit: 20 }, message: "must NOT have more than 20 items", schema: 20, parentSchema: schema11.properties.actions.items.properties.unplug, data: data8 };
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
                  if (typeof data9 === "string") {
                    if (func3(data9) > 100) {
                      const err20 = { instancePath: instancePath + "/actions/" + i0 + "/unplug/" + i1, schemaPath: "#/properties/actions/items/properties/unplug/items/maxLength", keyword: "maxLength", params: { limit: 100 }, message: "must NOT have more than 100 characters", schema: 100, parentSchema: schema11.properties.actions.items.properties.unplug.items, data: data9 };
                      if (vErrors === null) {
                        vErrors = [err20];
                      } else {
                        vErrors.push(err20);
                      }
                      errors++;
                    }
                  } else {
                    const err21 = { instancePath: instancePath + "/actions/" + i0 + "/unplug/" + i1, schemaPath: "#/properties/actions/items/properties/unplug/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.actions.items.properties.unplug.items.type, parentSchema: schema11.properties.actions.items.properties.unplug.items, data: data9 };
                    if (vErrors === null) {
                      vErrors = [err21];
                    } else {
                      vErrors.push(err21);
                    }
                    errors++;
                  }
                }
              } else {
                const err22 = { instancePath: instancePath + "/actions/" + i0 + "/unplug", schemaPath: "#/properties/actions/items/properties/unplug/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.actions.items.properties.unplug.type, parentSchema: schema11.properties.actions.items.properties.unplug, data: data8 };
                if (vErrors === null) {
                  vErrors = [err22];
                } else {
                  vErrors.push(err22);
                }
                errors++;
              }
            }
            if (data4.bridges !== void 0) {
              let data10 = data4.bridges;
              if (Array.isArray(data10)) {
                if (data10.length > 6) {
                  const err23 = { instancePath: instancePath + "/actions/" + i0 + "/bridges", schemaPath: "#/properties/actions/items/properties/bridges/maxItems", keyword: "maxItems", params: { limit: 6 }, message: "must NOT have more than 6 items", schema: 6, parentSchema: schema11.properties.actions.items.properties.bridges, data: data10 };
                  if (vErrors === null) {
                    vErrors = [err23];
                  } else {
                    vErrors.push(err23);
                  }
                  errors++;
                }
                const len2 = data10.length;
                for (let i2 = 0; i2 < len2; i2++) {
                  let data11 = data10[i2];
                  if (typeof data11 === "string") {
                    if (func3(data11) > 200) {
                      const err24 = { instancePath: instancePath + "/actions/" + i0 + "/bridges/" + i2, schemaPath: "#/properties/actions/items/properties/bridges/items/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.actions.items.properties.bridges.items, data: data11 };
                      if (vErrors === null) {
                        vErrors = [err24];
                      } else {
                        vErrors.push(err24);
                      }
                      errors++;
                    }
                  } else {
                    const err25 = { instancePath: instancePath + "/actions/" + i0 + "/bridges/" + i2, schemaPath: "#/properties/actions/items/properties/bridges/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.actions.items.properties.bridges.items.type, parentSchema: schema11.properties.actions.items.properties.bridges.items, data: data11 };
                    if (vErrors === null) {
                      vErrors = [err25];
                    } else {
                      vErrors.push(err25);
                    }
                    errors++;
                  }
                }
              } else {
                const err26 = { instancePath: instancePath + "/actions/" + i0 + "/bridges", schemaPath: "#/properties/actions/items/properties/bridges/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.actions.items.properties.bridges.type, parentSchema: schema11.properties.actions.items.properties.bridges, data: data10 };
                if (vErrors === null) {
                  vErrors = [err26];
                } else {
                  vErrors.push(err26);
                }
                errors++;
              }
            }
            if (data4.spare !== void 0) {
              let data12 = data4.spare;
              if (typeof data12 !== "boolean") {
                const err27 = { instancePath: instancePath + "/actions/" + i0 + "/spare", schemaPath: "#/properties/actions/items/properties/spare/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.actions.items.properties.spare.type, parentSchema: schema11.properties.actions.items.properties.spare, data: data12 };
                if (vErrors === null) {
                  vErrors = [err27];
                } else {
                  vErrors.push(err27);
                }
                errors++;
              }
            }
            if (data4.moving !== void 0) {
              let data13 = data4.moving;
              if (typeof data13 !== "boolean") {
                const err28 = { instancePath: instancePath + "/actions/" + i0 + "/moving", schemaPath: "#/properties/actions/items/properties/moving/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.actions.items.properties.moving.type, parentSchema: schema11.properties.actions.items.properties.moving, data: data13 };
                if (vErrors === null) {
                  vErrors = [err28];
                } else {
                  vErrors.push(err28);
                }
                errors++;
              }
            }
            if (data4.wiggle !== void 0) {
              let data14 = data4.wiggle;
              if (typeof data14 !== "boolean") {
                const err29 = { instancePath: instancePath + "/actions/" + i0 + "/wiggle", schemaPath: "#/properties/actions/items/properties/wiggle/type", keyword: "type", params: { type: "boolean" }, message: "must be boolean", schema: schema11.properties.actions.items.properties.wiggle.type, parentSchema: schema11.properties.actions.items.properties.wiggle, data: data14 };
                if (vErrors === null) {
                  vErrors = [err29];
                } else {
                  vErrors.push(err29);
                }
                errors++;
              }
            }
            if (data4.test !== void 0) {
              let data15 = data4.test;
              if (typeof data15 === "string") {
                if (func3(data15) > 200) {
                  const err30 = { instancePath: instancePath + "/actions/" + i0 + "/test", schemaPath: "#/properties/actions/items/properties/test/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.actions.items.properties.test, data: data15 };
                  if (vErrors === null) {
                    vErrors = [err30];
                  } else {
                    vErrors.push(err30);
                  }
                  errors++;
                }
              } else {
                const err31 = { instancePath: instancePath + "/actions/" + i0 + "/test", schemaPath: "#/properties/actions/items/properties/test/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.actions.items.properties.test.type, parentSchema: schema11.properties.actions.items.properties.test, data: data15 };
                if (vErrors === null) {
                  vErrors = [err31];
                } else {
                  vErrors.push(err31);
                }
                errors++;
              }
            }
            if (data4.follow !== void 0) {
              let data16 = data4.follow;
              if (true !== data16) {
                const err32 = { instancePath: instancePath + "/actions/" + i0 + "/follow", schemaPath: "#/properties/actions/items/properties/follow/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.actions.items.properties.follow, data: data16 };
                if (vErrors === null) {
                  vErrors = [err32];
                } else {
                  vErrors.push(err32);
                }
                errors++;
              }
            }
            if (data4.acknowledge !== void 0) {
              let data17 = data4.acknowledge;
              if (true !== data17) {
                const err33 = { instancePath: instancePath + "/actions/" + i0 + "/acknowledge", schemaPath: "#/properties/actions/items/properties/acknowledge/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.actions.items.properties.acknowledge, data: data17 };
                if (vErrors === null) {
                  vErrors = [err33];
                } else {
                  vErrors.push(err33);
                }
                errors++;
              }
            }
            if (data4.note !== void 0) {
              let data18 = data4.note;
              if (typeof data18 === "string") {
                if (func3(data18) > 2e3) {
                  const err34 = { instancePath: instancePath + "/actions/" + i0 + "/note", schemaPath: "#/properties/actions/items/properties/note/maxLength", keyword: "maxLength", params: { limit: 2e3 }, message: "must NOT have more than 2000 characters", schema: 2e3, parentSchema: schema11.properties.actions.items.properties.note, data: data18 };
                  if (vErrors === null) {
                    vErrors = [err34];
                  } else {
                    vErrors.push(err34);
                  }
                  errors++;
                }
                if (func3(data18) < 1) {
                  const err35 = { instancePath: instancePath + "/actions/" + i0 + "/note", schemaPath: "#/properties/actions/items/properties/note/minLength", keyword: "minLength", params: { limit: 1 }, message: "must NOT have fewer than 1 characters", schema: 1, parentSchema: schema11.properties.actions.items.properties.note, data: data18 };
                  if (vErrors === null) {
                    vErrors = [err35];
                  } else {
                    vErrors.push(err35);
                  }
                  errors++;
                }
              } else {
                const err36 = { instancePath: instancePath + "/actions/" + i0 + "/note", schemaPath: "#/properties/actions/items/properties/note/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.actions.items.properties.note.type, parentSchema: schema11.properties.actions.items.properties.note, data: data18 };
                if (vErrors === null) {
                  vErrors = [err36];
                } else {
                  vErrors.push(err36);
                }
                errors++;
              }
            }
            if (data4.diagnose !== void 0) {
              let data19 = data4.diagnose;
              if (Array.isArray(data19)) {
                if (data19.length > 2) {
                  const err37 = { instancePath: instancePath + "/actions/" + i0 + "/diagnose", schemaPath: "#/properties/actions/items/properties/diagnose/maxItems", keyword: "maxItems", params: { limit: 2 }, message: "must NOT have more than 2 items", schema: 2, parentSchema: schema11.properties.actions.items.properties.diagnose, data: data19 };
                  if (vErrors === null) {
                    vErrors = [err37];
                  } else {
                    vErrors.push(err37);
                  }
                  errors++;
                }
                if (data19.length < 1) {
                  const err38 = { instancePath: instancePath + "/actions/" + i0 + "/diagnose", schemaPath: "#/properties/actions/items/properties/diagnose/minItems", keyword: "minItems", params: { limit: 1 }, message: "must NOT have fewer than 1 items", schema: 1, parentSchema: schema11.properties.actions.items.properties.diagnose, data: data19 };
                  if (vErrors === null) {
                    vErrors = [err38];
                  } else {
                    vErrors.push(err38);
                  }
                  errors++;
                }
                const len3 = data19.length;
                for (let i3 = 0; i3 < len3; i3++) {
                  let data20 = data19[i3];
                  if (typeof data20 === "string") {
                    if (func3(data20) > 200) {
                      const err39 = { instancePath: instancePath + "/actions/" + i0 + "/diagnose/" + i3, schemaPath: "#/properties/actions/items/properties/diagnose/items/maxLength", keyword: "maxLength", params: { limit: 200 }, message: "must NOT have more than 200 characters", schema: 200, parentSchema: schema11.properties.actions.items.properties.diagnose.items, data: data20 };
                      if (vErrors === null) {
                        vErrors = [err39];
                      } else {
                        vErrors.push(err39);
                      }
                      errors++;
                    }
                  } else {
                    const err40 = { instancePath: instancePath + "/actions/" + i0 + "/diagnose/" + i3, schemaPath: "#/properties/actions/items/properties/diagnose/items/type", keyword: "type", params: { type: "string" }, message: "must be string", schema: schema11.properties.actions.items.properties.diagnose.items.type, parentSchema: schema11.properties.actions.items.properties.diagnose.items, data: data20 };
                    if (vErrors === null) {
                      vErrors = [err40];
                    } else {
                      vErrors.push(err40);
                    }
                    errors++;
                  }
                }
              } else {
                const err41 = { instancePath: instancePath + "/actions/" + i0 + "/diagnose", schemaPath: "#/properties/actions/items/properties/diagnose/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.actions.items.properties.diagnose.type, parentSchema: schema11.properties.actions.items.properties.diagnose, data: data19 };
                if (vErrors === null) {
                  vErrors = [err41];
                } else {
                  vErrors.push(err41);
                }
                errors++;
              }
            }
            if (data4["give-up"] !== void 0) {
              let data21 = data4["give-up"];
              if (true !== data21) {
                const err42 = { instancePath: instancePath + "/actions/" + i0 + "/give-up", schemaPath: "#/properties/actions/items/properties/give-up/const", keyword: "const", params: { allowedValue: true }, message: "must be equal to constant", schema: true, parentSchema: schema11.properties.actions.items.properties["give-up"], data: data21 };
                if (vErrors === null) {
                  vErrors = [err42];
                } else {
                  vErrors.push(err42);
                }
                errors++;
              }
            }
          } else {
            const err43 = { instancePath: instancePath + "/actions/" + i0, schemaPath: "#/properties/actions/items/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.properties.actions.items.type, parentSchema: schema11.properties.actions.items, data: data4 };
            if (vErrors === null) {
              vErrors = [err43];
            } else {
              vErrors.push(err43);
            }
            errors++;
          }
        }
      } else {
        const err44 = { instancePath: instancePath + "/actions", schemaPath: "#/properties/actions/type", keyword: "type", params: { type: "array" }, message: "must be array", schema: schema11.properties.actions.type, parentSchema: schema11.properties.actions, data: data3 };
        if (vErrors === null) {
          vErrors = [err44];
        } else {
          vErrors.push(err44);
        }
        errors++;
      }
    }
  } else {
    const err45 = { instancePath, schemaPath: "#/type", keyword: "type", params: { type: "object" }, message: "must be object", schema: schema11.type, parentSchema: schema11, data };
    if (vErrors === null) {
      vErrors = [err45];
    } else {
      vErrors.push(err45);
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
