room(engine_ground engine
     SOURCES large_array.cpp)
room(engine_model engine/model
     SOURCES arrangement.cpp conditions.cpp grid.cpp joins.cpp practice.cpp
     USES engine_ground)
room(engine_logic engine/logic
     SOURCES cone.cpp cover.cpp diagram.cpp diagram_cover.cpp evaluation.cpp least_choice.cpp machine.cpp minimal_cover.cpp modules.cpp
             prime_cubes.cpp program.cpp recording.cpp restriction.cpp row_set.cpp settled_circuit.cpp
             side_by_side.cpp statement.cpp symbolic_machine.cpp timed.cpp truth.cpp
     USES engine_model)
room(engine_water engine/water
     SOURCES bounds.cpp current.cpp holes.cpp influence.cpp intrinsic.cpp lanes.cpp settle.cpp settle_all.cpp
             settling.cpp spread.cpp step.cpp survey.cpp
     USES engine_model)
room(engine_body engine/body
     SOURCES capacity.cpp endings.cpp feel.cpp moves.cpp outcome.cpp pace.cpp route_graph.cpp route_lanes.cpp shape.cpp surroundings.cpp
             trail.cpp travel.cpp
     USES engine_water)
target_link_libraries(engine_body PRIVATE $<BUILD_INTERFACE:Boost::headers>)
room(engine_building engine/building
     SOURCES needs.cpp pools.cpp
     USES engine_logic engine_water)
room(engine_explore engine/explore
     SOURCES combinations.cpp explored.cpp guarding.cpp histories.cpp known_keys.cpp memory_graph.cpp
             neighbours.cpp phases.cpp saturation.cpp setting.cpp state_keys.cpp state_search.cpp states.cpp
             switching.cpp symbolic_states.cpp train.cpp
     USES engine_logic engine_body)
target_link_libraries(engine_explore PRIVATE $<BUILD_INTERFACE:Boost::headers>)
room(engine_playback engine/playback
     SOURCES patches.cpp playback.cpp stances.cpp water_steps.cpp
     USES engine_explore)
room(engine_findings engine/findings
     SOURCES accept.cpp body_spills.cpp diagonal_currents.cpp endless_loops.cpp falls.cpp formed_sources.cpp
             hard_landings.cpp idle_signals.cpp long_head_runs.cpp narrow_pits.cpp no_returns.cpp open_edges.cpp
             oscillations.cpp remembering_waters.cpp restless_waters.cpp rests.cpp sighting.cpp split_routes.cpp
             stacked_sources.cpp swimmer_pools.cpp switch_dangers.cpp table_rows.cpp thin_cushions.cpp
             tight_inlets.cpp twin_signals.cpp unreached_outlets.cpp unreached_states.cpp unsure_moves.cpp
             water_spills.cpp
     USES engine_tables engine_body)
room(engine_tables engine/tables
     SOURCES route_groups.cpp routes.cpp
     USES engine_explore engine_body)
room(engine_verdicts engine/verdicts
     SOURCES after_events.cpp clearing.cpp dealing.cpp expectations.cpp finding_claims.cpp route_claims.cpp
     USES engine_findings)
room(engine_judge engine
     SOURCES as_built.cpp judge.cpp
     USES engine_verdicts)
room(engine_works engine/works
     SOURCES arrivals.cpp barred_histories.cpp claims.cpp conditions.cpp destinations.cpp
             excerpt.cpp frame.cpp idle_signals.cpp in_plant.cpp island_form.cpp island_key.cpp
             islands.cpp journey.cpp judge_works.cpp knowledge.cpp lever_flips.cpp likeness.cpp
             logic_findings.cpp longest_times.cpp mixed_waters.cpp network.cpp passages.cpp
             plant_findings.cpp prospects.cpp reached.cpp region_findings.cpp region_sights.cpp
             region_walk.cpp region_waters.cpp regions.cpp showing.cpp spot_network.cpp
             supports.cpp trials.cpp unreached_outlets.cpp wire_flips.cpp
     USES engine_judge)
target_link_libraries(engine_works PRIVATE $<BUILD_INTERFACE:Boost::headers>)
room(engine_compare engine/compare
     SOURCES behaviour.cpp claim_changes.cpp compare.cpp deviations.cpp finding_changes.cpp ground.cpp
             joint_circuit.cpp part_changes.cpp route_changes.cpp time_changes.cpp value_changes.cpp
     USES engine_works)
